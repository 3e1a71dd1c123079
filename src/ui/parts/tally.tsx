// The verdicts so far, counted, and the last one.
import type { ReactElement } from 'react';
import { offBoard } from '../../core/profile/donor.js';
import { type Finding, selectPin, selectProgress } from '../../core/select/findings.js';
import type { TraceMark } from '../../core/select/trace.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownValue } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { type Line, type Span, span, spread, widthOf } from '../draw/line.js';
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
  const surroundings = useSurroundings();
  const { theme, words } = surroundings;
  const { counts, left } = selectProgress(state);
  const begin: Span[] = [span(' ')];
  for (const [verdict, n] of counts) {
    begin.push(
      span(`${theme.symbol[verdict]} ${n} ${words.verdict[verdict]}`, theme.verdict[verdict]),
      span('  '),
    );
  }
  if (left > 0) begin.push(span(words.screen.left(left), theme.style.quiet));
  const found = last === undefined ? null : selectPin(state, indexOf(state, last.pin));
  const room = width - widthOf(begin) - 1;
  const end = found === null ? [] : lastLines(found, state, surroundings);
  return (
    <Row
      width={width}
      line={spread(begin, end.find((line) => widthOf(line) <= room) ?? [], width, theme)}
    />
  );
};

/** The last verdict, in full and in shorter forms. */
const lastLines = (
  { pin, line, verdict }: Finding,
  state: WalkState,
  { theme, words }: Surroundings,
): readonly Line[] => {
  if (verdict === 'unread') return [];
  const symbol = span(`${theme.symbol[verdict]} `, theme.verdict[verdict]);
  const word = span(`${words.verdict[verdict]} `, theme.verdict[verdict]);
  const said = (...parts: readonly string[]): Span =>
    span(`${[words.screen.last, ...parts].join(' ')} `, theme.style.quiet);
  const value = shownValue(state, pin, words);
  return [
    [said(pin, offBoard(line).name, value), symbol, word],
    [said(pin, value), symbol, word],
    [said(pin), symbol, word],
  ];
};

const indexOf = (state: WalkState, pin: string): number =>
  state.plan.pins.findIndex((planned) => planned.pin === pin);
