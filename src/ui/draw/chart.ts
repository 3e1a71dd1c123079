// The live trace: the last seconds of readings between the limits of their lines. Newest at the right.
import { lowerLimitAt, upperLimitAt } from '../../core/select/scale.js';
import type { Trace } from '../../core/select/trace.js';
import type { Style, Theme } from '../theme.js';
import { createDots, dotCharacter, drawStroke, setDot } from './dots.js';
import { type Line, type Span, span } from './line.js';

export interface ChartSize {
  readonly width: number;
  /** Rows, the row of marks below included. */
  readonly rows: number;
  readonly spanS: number;
}

/** @param nowT the time at the right edge, seconds. */
export const drawChart = (
  trace: Trace,
  nowT: number,
  { width, rows, spanS }: ChartSize,
  theme: Theme,
): readonly Line[] => {
  const height = Math.max(1, rows - 1);
  const moving = createDots(width, height);
  const still = createDots(width, height);
  // Whole steps of time, so that a point moves left evenly and never wavers.
  const stepS = spanS / (2 * width);
  const columnOf = (t: number): number =>
    2 * width - 1 - (Math.floor(nowT / stepS) - Math.floor(t / stepS));
  const rowOf = (at: number): number => Math.round((1 - at) * (4 * height - 1));
  let before: { readonly x: number; readonly y: number; readonly t: number } | null = null;
  for (const { t, at, still: rests } of trace.points) {
    if (at === null) {
      before = null;
      continue;
    }
    const here = { x: columnOf(t), y: rowOf(at), t };
    const dots = rests ? still : moving;
    if (here.x >= 0) {
      if (before !== null && before.x >= 0 && t - before.t < 1) drawStroke(dots, before, here);
      else setDot(dots, here.x, here.y);
    }
    before = here;
  }
  const limits = new Set([upperLimitAt, lowerLimitAt].map((at) => rowOf(at) >> 2));
  const lines: Line[] = [];
  for (let row = 0; row < height; row += 1) {
    const ground = limits.has(row) ? theme.line.limit : ' ';
    const cells: Cell[] = [];
    for (let column = 0; column < width; column += 1) {
      const rested = dotCharacter(still, column, row, theme.unicode);
      const moved = dotCharacter(moving, column, row, theme.unicode);
      cells.push(
        rested !== null
          ? { text: rested, style: theme.style.still }
          : moved !== null
            ? { text: moved, style: theme.style.moving }
            : { text: ground, style: theme.style.faint },
      );
    }
    lines.push(joinCells(cells));
  }
  return [...lines, marksLine(trace, width, (t) => columnOf(t) >> 1, theme)];
};

interface Cell {
  readonly text: string;
  readonly style: Style;
}

/** Neighbours of one style become one span. */
export const joinCells = (cells: readonly Cell[]): Line => {
  const spans: Span[] = [];
  for (const { text, style } of cells) {
    const last = spans.at(-1);
    if (last?.style === style) spans[spans.length - 1] = { text: last.text + text, style };
    else spans.push({ text, style });
  }
  return spans;
};

/** Under the trace: where a pin was judged, its verdict's symbol and its name. */
const marksLine = (
  trace: Trace,
  width: number,
  columnOf: (t: number) => number,
  theme: Theme,
): Line => {
  const spans: Span[] = [];
  let filled = 0;
  for (const { t, pin, verdict } of trace.marks) {
    const column = columnOf(t);
    const text = `${theme.symbol[verdict]}${pin}`;
    if (column < filled || column + text.length > width) continue;
    spans.push(span(' '.repeat(column - filled)), span(text, theme.verdict[verdict]));
    filled = column + text.length + 1;
    spans.push(span(' '));
  }
  return spans;
};
