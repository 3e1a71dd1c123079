// The live trace: the last seconds of readings between the limits of their lines. Newest at the right, a row of
// marks below: which pin was judged when, and how.
import { lowerLimitAt, upperLimitAt } from '../../core/select/scale.js';
import type { Trace, TraceMark } from '../../core/select/trace.js';
import type { Style, Theme } from '../theme.js';
import {
  createDots,
  type Dots,
  dotCharacter,
  drawStroke,
  isBlank,
  merged,
  setDot,
} from './dots.js';
import { type Line, type Span, span } from './line.js';

export interface ChartSize {
  readonly width: number;
  /** Rows, the row of marks below included. */
  readonly rows: number;
  readonly spanS: number;
}

export interface Chart {
  readonly lines: readonly Line[];
  /** The rows in which the limits are drawn. */
  readonly highRow: number;
  readonly lowRow: number;
}

/** A gap this long between two readings (seconds) is shown as a gap. */
const longestStrokeS = 1;

/** The column of dots of a time, in whole steps of time: a point moves left evenly and never wavers. */
export const timeAxis = (nowT: number, { width, spanS }: ChartSize): ((t: number) => number) => {
  const stepS = spanS / (2 * width);
  return (t) => 2 * width - 1 - (Math.floor(nowT / stepS) - Math.floor(t / stepS));
};

/** @param nowT the time at the right edge, seconds. */
export const drawChart = (trace: Trace, nowT: number, size: ChartSize, theme: Theme): Chart => {
  const columnOf = timeAxis(nowT, size);
  const chart = drawReadings(trace.points, columnOf, { ...size, rows: size.rows - 1 }, theme);
  const marks = marksLine(trace.marks, size.width, (t) => columnOf(t) >> 1, theme);
  return { ...chart, lines: [...chart.lines, marks] };
};

/**
 * The readings without the row of marks.
 * @param edges times at which an upright line is drawn, with overload along the top; null for neither.
 */
export const drawReadings = (
  points: Trace['points'],
  columnOf: (t: number) => number,
  { width, rows }: ChartSize,
  theme: Theme,
  edges: readonly number[] | null = null,
): Chart => {
  const height = Math.max(1, rows);
  const moving = createDots(width, height);
  const still = createDots(width, height);
  const limits = createDots(width, height);
  const rowOf = (at: number): number => Math.round((1 - at) * (4 * height - 1));

  for (const at of [lowerLimitAt, upperLimitAt]) {
    for (let x = 0; x < 2 * width; x += 2) setDot(limits, x, rowOf(at));
  }
  for (const edge of edges ?? []) {
    for (let y = 0; y < 4 * height; y += 2) setDot(limits, columnOf(edge), y);
  }
  const overloadY = edges === null ? null : 0;
  let before: { readonly x: number; readonly y: number; readonly t: number } | null = null;
  for (const { t, at, still: rests } of points) {
    const y = at === null ? overloadY : rowOf(at);
    const here = y === null ? null : { x: columnOf(t), y, t };
    if (here !== null && here.x >= 0) {
      const joined = before !== null && before.x >= 0 && t - before.t < longestStrokeS;
      drawStroke(rests ? still : moving, joined && before !== null ? before : here, here);
    }
    before = here;
  }
  const layers: readonly Layer[] = [
    // A cell has one colour: where the reading came to rest within a cell, the whole cell rests.
    { dots: still, drawn: merged(still, moving), style: theme.style.still },
    { dots: moving, drawn: moving, style: theme.style.moving },
    { dots: limits, drawn: limits, style: theme.style.faint },
  ];
  const lines = Array.from({ length: height }, (_, row) => layeredLine(layers, row, width, theme));
  return {
    lines,
    highRow: rowOf(upperLimitAt) >> 2,
    lowRow: rowOf(lowerLimitAt) >> 2,
  };
};

interface Layer {
  /** Where the layer shows. */
  readonly dots: Dots;
  /** What it shows there. */
  readonly drawn: Dots;
  readonly style: Style;
}

/** Of each cell only the uppermost layer shows. */
const layeredLine = (
  layers: readonly Layer[],
  row: number,
  width: number,
  { unicode, style }: Theme,
): Line =>
  joinCells(
    Array.from({ length: width }, (_, column) => {
      for (const layer of layers) {
        if (isBlank(layer.dots, column, row)) continue;
        const text = dotCharacter(layer.drawn, column, row, unicode);
        return { text, style: layer.style };
      }
      return { text: ' ', style: style.faint };
    }),
  );

export interface StyledCell {
  readonly text: string;
  readonly style: Style;
}

/** Neighbours of one style become one span. */
export const joinCells = (cells: readonly StyledCell[]): Line => {
  const spans: Span[] = [];
  for (const { text, style } of cells) {
    const last = spans.at(-1);
    if (last?.style === style) spans[spans.length - 1] = { text: last.text + text, style };
    else spans.push({ text, style });
  }
  return spans;
};

const marksLine = (
  marks: readonly TraceMark[],
  width: number,
  columnOf: (t: number) => number,
  theme: Theme,
): Line => {
  const placed: { readonly column: number; readonly text: string; readonly style: Style }[] = [];
  let free = width + 1;
  // The newest first: where names would run into one another, an older one is left out.
  for (const { t, pin, verdict } of [...marks].reverse()) {
    const text = `${theme.symbol[verdict]}${pin}`;
    const column = Math.min(columnOf(t), width - text.length);
    if (column < 0 || column + text.length >= free) continue;
    placed.unshift({ column, text, style: theme.verdict[verdict] });
    free = column;
  }
  const spans: Span[] = [];
  let filled = 0;
  for (const { column, text, style } of placed) {
    spans.push(span(' '.repeat(column - filled)), span(text, style));
    filled = column + text.length;
  }
  return spans;
};
