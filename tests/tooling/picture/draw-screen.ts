// Cells as an SVG picture. Block elements and Braille patterns are drawn as shapes, as terminals draw them, so
// that they join without seams whatever the font.
import type { Cell, CellStyle } from './parse-screen.js';

export interface PictureStyle {
  readonly ground: string;
  readonly ink: string;
}

export const darkPaper: PictureStyle = { ground: '#14171b', ink: '#e4e6e9' };
export const lightPaper: PictureStyle = { ground: '#fbfaf7', ink: '#22252a' };

const cellWidth = 10;
const cellHeight = 21;
const baseline = 15.5;
const fontSize = 16.6;
const margin = 14;

export const drawScreen = (
  rows: readonly (readonly Cell[])[],
  columns: number,
  paper: PictureStyle,
): string => {
  const width = columns * cellWidth + 2 * margin;
  const height = rows.length * cellHeight + 2 * margin;
  const shapes: string[] = [];
  rows.forEach((cells, row) => {
    let column = 0;
    for (const cell of joined(cells)) {
      const x = margin + column * cellWidth;
      shapes.push(drawCell(cell, x, margin + row * cellHeight, paper));
      column += cell.width;
    }
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `<rect width="${width}" height="${height}" rx="8" fill="${paper.ground}"/>`,
    ...shapes,
    '</svg>',
  ].join('\n');
};

const repeats = new Set('█▀▄─━');

/** Neighbours that join without a gap are one wide cell: no seam can show between them. */
const joined = (cells: readonly Cell[]): readonly Cell[] => {
  const runs: Cell[] = [];
  for (const cell of cells) {
    const last = runs.at(-1);
    const joins = repeats.has(cell.text) || (cell.text === ' ' && cell.style.inverse);
    if (last !== undefined && joins && last.text === cell.text && last.style === cell.style) {
      runs[runs.length - 1] = { ...last, width: last.width + cell.width };
    } else runs.push(cell);
  }
  return runs;
};

const coloursOf = (style: CellStyle, paper: PictureStyle): readonly [string, string | null] => {
  const ink = style.foreground ?? paper.ink;
  return style.inverse ? [style.background ?? paper.ground, ink] : [ink, style.background];
};

const drawCell = (
  { text, width, style }: Cell,
  x: number,
  y: number,
  paper: PictureStyle,
): string => {
  const [ink, ground] = coloursOf(style, paper);
  const wide = width * cellWidth;
  const opacity = style.faint ? ' opacity="0.6"' : '';
  const under = style.underline
    ? `<rect x="${x}" y="${y + cellHeight - 3}" width="${wide}" height="1.2" fill="${ink}"/>`
    : '';
  const back =
    ground === null
      ? ''
      : `<rect x="${x}" y="${y}" width="${wide + 0.4}" height="${cellHeight + 0.4}" fill="${ground}"/>`;
  if (text === ' ') return back + under;
  const shape = shapeOf(text, x, y, wide, ink);
  if (shape !== null) return back + shape + under;
  const weight = style.bold ? ' font-weight="bold"' : '';
  const escaped = text.replace(/&/gu, '&amp;').replace(/</gu, '&lt;');
  return `${back}<text x="${x}" y="${y + baseline}" font-family="DejaVu Sans Mono" font-size="${fontSize}" fill="${ink}"${weight}${opacity}>${escaped}</text>${under}`;
};

const rectangle = (x: number, y: number, width: number, height: number, ink: string): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${ink}"/>`;

/** Bleeds a little to the right and down, where a neighbour of the same kind follows. */
const seam = 0.4;

const shapeOf = (text: string, x: number, y: number, wide: number, ink: string): string | null => {
  const half = cellHeight / 2;
  const middle = y + half;
  const code = text.codePointAt(0) ?? 0;
  if (text === '█') return rectangle(x, y, wide + seam, cellHeight + seam, ink);
  if (text === '▀') return rectangle(x, y, wide + seam, half, ink);
  if (text === '▄') return rectangle(x, middle, wide + seam, half + seam, ink);
  if (text === '─') return rectangle(x, middle - 0.7, wide + seam, 1.4, ink);
  if (text === '━') return rectangle(x, middle - 1.6, wide + seam, 3.2, ink);
  if (text === '┃') return rectangle(x + cellWidth / 2 - 1.6, y, 3.2, cellHeight, ink);
  if (text === '▐') return rectangle(x + cellWidth / 2, y, cellWidth / 2 + seam, cellHeight, ink);
  if (text === '▌') return rectangle(x, y, cellWidth / 2, cellHeight, ink);
  if (code > 0x2800 && code <= 0x28ff) return braille(code - 0x2800, x, y, ink);
  return null;
};

const dotPlaces = [
  [0, 0],
  [0, 1],
  [0, 2],
  [1, 0],
  [1, 1],
  [1, 2],
  [0, 3],
  [1, 3],
] as const;

const braille = (bits: number, x: number, y: number, ink: string): string =>
  dotPlaces
    .map(([column, row], bit) =>
      bits & (1 << bit)
        ? `<circle cx="${x + cellWidth * (0.25 + 0.5 * column)}" cy="${y + (cellHeight / 4) * (row + 0.5)}" r="1.7" fill="${ink}"/>`
        : '',
    )
    .join('');
