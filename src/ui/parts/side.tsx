// The list at the right of a large terminal: what is not normal, and below it the latest pins.
import type { ReactElement } from 'react';
import { offBoard } from '../../core/profile/donor.js';
import { type Finding, selectFindings, selectPin } from '../../core/select/findings.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownValue } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { cutText, type Line, span, spread } from '../draw/line.js';
import { Rows } from './rows.js';

export const Side = ({
  state,
  width,
  rows,
}: {
  readonly state: WalkState;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { theme, words } = surroundings;
  const { title, noneFound, more } = words.screen;
  const findings = selectFindings(state);
  const room = Math.max(2, Math.floor((rows - 3) / 2));
  const shown = findings.slice(-room);
  const hidden = findings.length - shown.length;
  const heading = (text: string): Line => {
    const tail = theme.line.rule.repeat(Math.max(0, width - text.length - 1));
    return [span(text, theme.style.quiet), span(` ${tail}`, theme.style.faint)];
  };
  const line = (finding: Finding): Line => findingLine(finding, state, width, surroundings);
  const top: readonly Line[] = [
    heading(title.review),
    ...(findings.length === 0 ? [[span(noneFound, theme.style.faint)]] : shown.map(line)),
    ...(hidden > 0 ? [[span(`${theme.line.more} ${more(hidden)}`, theme.style.quiet)]] : []),
    [],
    heading(title.latest),
  ];
  const latest = state.named
    .slice(-Math.max(0, rows - top.length))
    .reverse()
    .flatMap(({ index }) => selectPin(state, index) ?? []);
  return <Rows width={width} lines={[...top, ...latest.map(line)]} height={rows} />;
};

const pinColumns = 5;
const verdictColumns = 8;

/** Symbol, pin, line, value, verdict in columns. */
export const findingLine = (
  { pin, line, verdict }: Finding,
  state: WalkState,
  width: number,
  { theme, words }: Surroundings,
): Line => {
  const style = theme.verdict[verdict];
  return spread(
    [
      span(`${theme.symbol[verdict]} `, style),
      span(
        cutText(offBoard(pin).name, pinColumns, theme.line.more).padEnd(pinColumns),
        theme.style.strong,
      ),
      span(line, theme.style.text),
    ],
    [
      span(`${verdict === 'unread' ? '' : shownValue(state, pin, words)}  `, theme.style.text),
      span(words.verdict[verdict].padEnd(verdictColumns), style),
    ],
    width,
    theme,
  );
};
