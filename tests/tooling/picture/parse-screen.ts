// A captured terminal (text with SGR sequences, one line a row) as cells. Knows what the pictures need: bold,
// faint, underline, inverse, the sixteen colours, the 256 and the full ones. Other sequences are an error.
import stringWidth from 'string-width';

export interface CellStyle {
  readonly bold: boolean;
  readonly faint: boolean;
  readonly underline: boolean;
  readonly inverse: boolean;
  readonly foreground: string | null;
  readonly background: string | null;
}

export interface Cell {
  readonly text: string;
  readonly width: number;
  readonly style: CellStyle;
}

const plain: CellStyle = {
  bold: false,
  faint: false,
  underline: false,
  inverse: false,
  foreground: null,
  background: null,
};

/** A terminal's usual sixteen, of no terminal in particular. */
const sixteen = [
  '#1b1e23',
  '#c8503c',
  '#6a9955',
  '#c39a3c',
  '#4a7ec2',
  '#a565b5',
  '#3f9c9c',
  '#c4c8cd',
  '#6c737c',
  '#f0705a',
  '#8fc877',
  '#ecc460',
  '#74a8ee',
  '#cf92dd',
  '#66c8c8',
  '#f4f6f8',
] as const;

const indexed = (index: number): string => {
  const named = sixteen[index];
  if (named !== undefined) return named;
  if (index >= 232) {
    const level = 8 + 10 * (index - 232);
    return `rgb(${level},${level},${level})`;
  }
  const part = (step: number): number => {
    const level = Math.floor((index - 16) / step) % 6;
    return level === 0 ? 0 : 55 + 40 * level;
  };
  return `rgb(${part(36)},${part(6)},${part(1)})`;
};

const withCodes = (style: CellStyle, given: string): CellStyle => {
  const codes = given === '' ? [0] : given.split(';').map(Number);
  let next = style;
  for (let at = 0; at < codes.length; at += 1) {
    const code = codes[at] ?? 0;
    if (code === 0) next = plain;
    else if (code === 1) next = { ...next, bold: true };
    else if (code === 2) next = { ...next, faint: true };
    else if (code === 4) next = { ...next, underline: true };
    else if (code === 7) next = { ...next, inverse: true };
    else if (code === 22) next = { ...next, bold: false, faint: false };
    else if (code === 24) next = { ...next, underline: false };
    else if (code === 27) next = { ...next, inverse: false };
    else if (code === 39) next = { ...next, foreground: null };
    else if (code === 49) next = { ...next, background: null };
    else if (code >= 30 && code <= 37) next = { ...next, foreground: indexed(code - 30) };
    else if (code >= 90 && code <= 97) next = { ...next, foreground: indexed(code - 82) };
    else if (code >= 40 && code <= 47) next = { ...next, background: indexed(code - 40) };
    else if (code >= 100 && code <= 107) next = { ...next, background: indexed(code - 92) };
    else if (code === 38 || code === 48) {
      const full = codes[at + 1] === 2;
      const colour = full
        ? `rgb(${codes.slice(at + 2, at + 5).join(',')})`
        : indexed(codes[at + 2] ?? 0);
      next = code === 38 ? { ...next, foreground: colour } : { ...next, background: colour };
      at += full ? 4 : 2;
    } else throw new RangeError(`the picture knows no SGR code ${code}`);
  }
  return next;
};

/** @throws RangeError for a sequence it does not know. */
export const parseScreen = (captured: string): readonly (readonly Cell[])[] => {
  let style = plain;
  return captured
    .replace(/\n$/u, '')
    .split('\n')
    .map((line) => {
      const cells: Cell[] = [];
      // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are what is read here
      for (const [token, codes] of line.matchAll(/\u001b\[([\d;]*)m|./gu)) {
        if (codes !== undefined) style = withCodes(style, codes);
        else if (token === '\u001b') throw new RangeError('the picture knows only SGR sequences');
        else cells.push({ text: token, width: stringWidth(token), style });
      }
      return cells;
    });
};
