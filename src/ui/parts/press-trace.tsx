// The trace of a press test, with the windows of its cues below it.
import type { ReactElement } from 'react';
import type { PressView } from '../../core/select/press.js';
import type { Trace } from '../../core/select/trace.js';
import { useSurroundings } from '../context.js';
import { drawReadings, timeAxis } from '../draw/chart.js';
import { type Line, span } from '../draw/line.js';
import { drawPressBand } from '../draw/press-band.js';
import { Rows } from './rows.js';

const labelWidth = 7;
/** Seconds to a column of cells: a window is then wide enough for its word. */
const columnS = 0.17;
const mostS = 18;
const bandRows = 2;

export const PressTrace = ({
  view,
  trace,
  t,
  width,
  rows,
}: {
  readonly view: PressView;
  readonly trace: Trace;
  /** The time at the right edge, seconds. */
  readonly t: number;
  readonly width: number;
  /** The two rows of windows included; with no more than these there is no trace. */
  readonly rows: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const { press, limit, large } = words.screen;
  const room = width - labelWidth - 1;
  const size = { width: room, rows: rows - bandRows, spanS: Math.min(mostS, columnS * room) };
  const columnOf = timeAxis(t, size);
  const edges = [
    ...view.windows.map(({ fromS }) => fromS),
    ...view.windows.slice(-1).flatMap(({ toS }) => toS ?? []),
  ];
  const { lines, highRow, lowRow } = drawReadings(trace.points, columnOf, size, theme, edges);
  const chart = lines.slice(0, Math.max(0, size.rows)).map((line, row): Line => {
    const label =
      row === 0 ? large.overload : row === highRow ? limit.high : row === lowRow ? limit.low : '';
    return [span(` ${label}`.padEnd(labelWidth), theme.style.faint), ...line];
  });
  const band = drawPressBand(view.windows, (at) => columnOf(at) >> 1, room, press, theme);
  const indent = span(' '.repeat(labelWidth));
  return (
    <Rows
      width={width}
      lines={[...chart, ...band.map((line) => [indent, ...line])]}
      height={rows}
    />
  );
};
