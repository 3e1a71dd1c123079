// The last seconds of readings.
import type { ReactElement } from 'react';
import type { Trace as TraceData } from '../../core/select/trace.js';
import { useSurroundings } from '../context.js';
import { drawChart } from '../draw/chart.js';
import { type Line, span } from '../draw/line.js';
import { Rows } from './rows.js';

const spanS = 8;
const labelWidth = 6;

export const Trace = ({
  trace,
  t,
  width,
  rows,
}: {
  readonly trace: TraceData;
  /** The time at the right edge, seconds. */
  readonly t: number;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const chart = drawChart(trace, t, { width: width - labelWidth - 1, rows, spanS }, theme);
  const { low, high } = words.screen.limit;
  const label = (row: number): string => (row === 1 ? high : row === rows - 3 ? low : '');
  const lines: readonly Line[] = chart.map((line, row) => [
    span(` ${label(row)}`.padEnd(labelWidth), theme.style.faint),
    ...line,
  ]);
  return <Rows lines={lines} height={rows} />;
};
