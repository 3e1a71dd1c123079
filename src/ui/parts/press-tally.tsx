// What the windows of the place under the tool showed, counted: pressed and released against reads and open.
import type { ReactElement } from 'react';
import type { PressView, Shown } from '../../core/select/press.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { type Line, span } from '../draw/line.js';
import { verdictOf } from '../draw/press-band.js';
import { Rows } from './rows.js';

export const pressTallyRows = 3;

export const PressTally = ({
  view,
  width,
}: {
  readonly view: PressView;
  readonly width: number;
}): ReactElement => (
  <Rows width={width} lines={tallyLines(view, useSurroundings())} height={pressTallyRows} />
);

/** Columns of a window's name, and of the labels before them with what stands apart. */
const columnWidth = 9;
const leadColumns = 14;

const tallyLines = (
  { tally, free }: PressView,
  { theme, words }: Surroundings,
): readonly Line[] => {
  const { press } = words.screen;
  if (free !== null) return [[], [span(` ${press.changed(free.changes)}`, theme.style.strong)]];
  const columns = columnsOf({ tally });
  const labels = [press.pressed, press.released];
  const lead = Math.max(...labels.map((label) => label.length)) + 3;
  const head: Line = [
    span(' '.repeat(lead)),
    ...columns.map((shown) =>
      span(
        `${theme.symbol[verdictOf(shown)]} ${press.shown[shown]}`.padEnd(columnWidth + 1),
        theme.verdict[verdictOf(shown)],
      ),
    ),
  ];
  const row = (cue: 'press' | 'release', label: string): Line => [
    span(` ${label}`.padEnd(lead), theme.style.quiet),
    ...columns.map((shown) => {
      const n = tally[cue][shown];
      return span(`  ${n}`.padEnd(columnWidth + 1), n > 0 ? theme.style.strong : theme.style.faint);
    }),
  ];
  return [head, row('press', press.pressed), row('release', press.released)];
};

/** The tally in one line, for a narrow screen. */
export const shortTally = ({ tally, free }: PressView, { theme, words }: Surroundings): Line => {
  const { press } = words.screen;
  if (free !== null) return [span(` ${press.changed(free.changes)}`, theme.style.strong)];
  const part = (cue: 'press' | 'release', label: string): Line => [
    span(` ${label}`, theme.style.quiet),
    ...columnsOf({ tally })
      .filter((shown) => tally[cue][shown] > 0)
      .map((shown) => {
        const verdict = verdictOf(shown);
        return span(` ${theme.symbol[verdict]}${tally[cue][shown]}`, theme.verdict[verdict]);
      }),
  ];
  return [...part('press', press.pressed), span(' '), ...part('release', press.released)];
};

/** How wide the table is: another column where the line showed both too much and too little. */
export const pressTallyColumns = (view: PressView): number =>
  leadColumns + (columnWidth + 1) * columnsOf(view).length;

/** Reads and unclear always, and between them what there is beside; open where there is nothing yet. */
const columnsOf = ({ tally: { press, release } }: Pick<PressView, 'tally'>): readonly Shown[] => {
  const beside = (['open', 'high', 'short', 'low'] as const).filter(
    (shown) => press[shown] + release[shown] > 0,
  );
  return ['normal', ...(beside.length === 0 ? (['open'] as const) : beside), 'unclear'];
};
