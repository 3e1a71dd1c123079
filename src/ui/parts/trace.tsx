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
  const { low, high } = words.screen.limit;
  const size = { width: width - labelWidth - 1, rows, spanS };
  const { lines, highRow, lowRow } = drawChart(trace, t, size, theme);
  const labelled = lines.map((line, row): Line => {
    const label = row === highRow ? high : row === lowRow ? low : '';
    return [span(` ${label}`.padEnd(labelWidth), theme.style.faint), ...line];
  });
  return <Rows width={width} lines={labelled} height={rows} />;
};
