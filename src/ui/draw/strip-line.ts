// One row of the connector as one line: a symbol for each pin, and the pin's name at the place the screen is
// about. A row too long for the screen shows the part around that place.

import type { StripCell, StripRow } from '../../core/select/strip.js';
import type { Style, Theme } from '../theme.js';
import { columnsOf } from './columns.js';
import { cutText, type Line, type Span, span } from './line.js';

export interface StripSize {
  readonly width: number;
  /** Columns of the label before the cells. */
  readonly label: number;
  /** Columns of a cell, the same in all rows. */
  readonly cell: number;
}

const widestCell = 8;

/** One cell width for all rows, so that the columns of the connector stand under one another. */
export const stripSize = (rows: readonly StripRow[], width: number, label: number): StripSize => {
  const longest = Math.max(1, ...rows.map(({ cells }) => cells.length));
  const cell = Math.min(widestCell, Math.max(1, Math.floor((width - label) / longest)));
  return { width, label, cell };
};

export const drawStripRow = (
  { cells }: StripRow,
  label: string,
  { width, label: labelWidth, cell }: StripSize,
  here: Style,
  theme: Theme,
): Line => {
  const room = Math.max(1, Math.floor((width - labelWidth) / cell));
  const { from, to } = windowAround(cells, room);
  const spans: Span[] = [span(padded(label, labelWidth, theme), theme.style.quiet)];
  for (const shown of cells.slice(from, to)) spans.push(drawCell(shown, cell, here, theme));
  if (from > 0) spans[1] = span(center(theme.line.more, cell), theme.style.faint);
  if (to < cells.length)
    spans[spans.length - 1] = span(center(theme.line.more, cell), theme.style.faint);
  return spans;
};

const windowAround = (
  cells: readonly StripCell[],
  room: number,
): { readonly from: number; readonly to: number } => {
  if (cells.length <= room) return { from: 0, to: cells.length };
  const at = Math.max(
    0,
    cells.findIndex(({ here }) => here),
  );
  const from = Math.min(cells.length - room, Math.max(0, at - (room >> 1)));
  return { from, to: from + room };
};

const drawCell = (shown: StripCell, width: number, here: Style, theme: Theme): Span => {
  if (shown.here) {
    const text = width >= columnsOf(shown.pin) ? shown.pin : theme.symbol[shown.verdict];
    return span(center(text, width), { ...here, inverse: true, bold: true });
  }
  const style = theme.verdict[shown.verdict];
  return span(
    center(theme.symbol[shown.verdict], width),
    shown.open ? { ...style, underline: true } : style,
  );
};

const center = (text: string, width: number): string => {
  const free = Math.max(0, width - columnsOf(text));
  const left = (free + 1) >> 1;
  return ' '.repeat(left) + text + ' '.repeat(free - left);
};

const padded = (text: string, width: number, theme: Theme): string => {
  const cut = cutText(text, width, theme.line.more);
  return cut + ' '.repeat(Math.max(0, width - columnsOf(cut)));
};
