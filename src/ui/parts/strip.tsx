// The connector's rows of pins with the verdicts so far and the place in them.
import type { ReactElement } from 'react';
import { type StripRow, selectStrip } from '../../core/select/strip.js';
import type { WalkState } from '../../core/walk/state.js';
import { useSurroundings } from '../context.js';
import { drawStripRow, stripSize } from '../draw/strip-line.js';
import { Rows } from './rows.js';

const labelWidth = 8;

export const Strip = ({
  state,
  width,
  rows,
  here,
}: {
  readonly state: WalkState;
  readonly width: number;
  readonly rows: number;
  /** Index of the pin to mark; without it the screen's subject. */
  readonly here?: number | undefined;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const all = selectStrip(state, here);
  const size = stripSize(all, width - 1, labelWidth);
  const lines = around(all, rows).map((row) => {
    const first = row.cells[0]?.pin ?? '';
    const label = row.row === null ? ` ${first}` : ` ${words.screen.row} ${row.row}`;
    return drawStripRow(row, label, size, theme.style.accent, theme);
  });
  return <Rows width={width} lines={lines} height={rows} />;
};

/** As many rows as fit, the present one among them. */
const around = (rows: readonly StripRow[], most: number): readonly StripRow[] => {
  const at = Math.max(
    0,
    rows.findIndex(({ cells }) => cells.some(({ here }) => here)),
  );
  const from = Math.max(0, Math.min(rows.length - most, at - (most >> 1)));
  return rows.slice(from, from + most);
};
