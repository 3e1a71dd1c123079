// A canvas of dots, two wide and four high to a character cell, drawn with Braille patterns (Unicode block
// U+2800) or, where there are none, with one mark a cell.

export interface Dots {
  readonly columns: number;
  readonly rows: number;
  /** Bits of the cells, row by row. */
  readonly cells: Uint8Array;
}

export const createDots = (columns: number, rows: number): Dots => ({
  columns,
  rows,
  cells: new Uint8Array(columns * rows),
});

/** Bit of each dot in a Braille cell, by row and column. */
const bitOf = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

/** Sets a dot; outside the canvas it does nothing. */
export const setDot = ({ columns, rows, cells }: Dots, x: number, y: number): void => {
  if (x < 0 || y < 0 || x >= 2 * columns || y >= 4 * rows) return;
  const bit = bitOf[y & 3]?.[x & 1] ?? 0;
  const cell = (y >> 2) * columns + (x >> 1);
  cells[cell] = (cells[cell] ?? 0) | bit;
};

/** A line from dot to dot. Source: Bresenham 1965, from memory. */
export const drawStroke = (
  dots: Dots,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
): void => {
  const dx = Math.abs(to.x - from.x);
  const dy = -Math.abs(to.y - from.y);
  const sx = from.x < to.x ? 1 : -1;
  const sy = from.y < to.y ? 1 : -1;
  let [x, y, error] = [from.x, from.y, dx + dy];
  for (;;) {
    setDot(dots, x, y);
    if (x === to.x && y === to.y) return;
    const twice = 2 * error;
    if (twice >= dy) {
      error += dy;
      x += sx;
    }
    if (twice <= dx) {
      error += dx;
      y += sy;
    }
  }
};

/** The dots of both, which are equally large. */
export const merged = (one: Dots, other: Dots): Dots => ({
  ...one,
  cells: one.cells.map((bits, at) => bits | (other.cells[at] ?? 0)),
});

export const isBlank = ({ columns, cells }: Dots, column: number, row: number): boolean =>
  (cells[row * columns + column] ?? 0) === 0;

/** The character of a cell. */
export const dotCharacter = (
  { columns, cells }: Dots,
  column: number,
  row: number,
  unicode: boolean,
): string => {
  const value = cells[row * columns + column] ?? 0;
  if (value === 0) return ' ';
  if (unicode) return String.fromCharCode(0x2800 + value);
  const upper = (value & 0x1b) !== 0;
  const lower = (value & 0xe4) !== 0;
  return upper && lower ? ':' : upper ? "'" : '.';
};
