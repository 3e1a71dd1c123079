// The verdicts so far, counted, and the last one.
import type { ReactElement } from 'react';
import { selectPin, selectProgress } from '../../core/select/findings.js';
import type { TraceMark } from '../../core/select/trace.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownValue } from '../../core/words/describe.js';
import { useSurroundings } from '../context.js';
import { type Span, span, spread } from '../draw/line.js';
import { Row } from './rows.js';

export const Tally = ({
  state,
  last,
  width,
}: {
  readonly state: WalkState;
  readonly last: TraceMark | undefined;
  readonly width: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const { counts, left } = selectProgress(state);
  const begin: Span[] = [span(' ')];
  for (const [verdict, n] of counts) {
    begin.push(
      span(`${theme.symbol[verdict]} ${n} ${words.verdict[verdict]}`, theme.verdict[verdict]),
      span('  '),
    );
  }
  if (left > 0) begin.push(span(words.screen.left(left), theme.style.quiet));
  const end: Span[] = [];
  const found = last === undefined ? null : selectPin(state, indexOf(state, last.pin));
  if (found !== null && found.verdict !== 'unread') {
    const { pin, line, verdict } = found;
    end.push(
      span(
        `${words.screen.last} ${pin} ${line} ${shownValue(state, pin, words)} `,
        theme.style.quiet,
      ),
      span(`${theme.symbol[verdict]} ${words.verdict[verdict]} `, theme.verdict[verdict]),
    );
  }
  return <Row line={spread(begin, end, width, theme)} />;
};

const indexOf = (state: WalkState, pin: string): number =>
  state.plan.pins.findIndex((planned) => planned.pin === pin);
