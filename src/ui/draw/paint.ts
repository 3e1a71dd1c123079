// A line as the terminal takes it: text with SGR sequences (ECMA-48), each closed by its own end. Colours come as
// '#rrggbb', 'ansi256(n)' or one of the sixteen names.
import type { Style } from '../theme.js';
import type { Line } from './line.js';

const names = ['black', 'red', 'green', 'yellow', 'blue', 'magenta', 'cyan', 'white'];

/** The parameter that sets a colour. @throws RangeError for a colour in no known form. */
export const colourCode = (colour: string): string => {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/u.exec(colour);
  if (hex !== null) {
    const parts = hex.slice(1).map((part) => Number.parseInt(part, 16));
    return `38;2;${parts.join(';')}`;
  }
  const indexed = /^ansi256\((\d{1,3})\)$/u.exec(colour);
  if (indexed !== null) return `38;5;${indexed[1]}`;
  if (colour === 'gray') return '90';
  const bright = colour.endsWith('Bright');
  const at = names.indexOf(bright ? colour.slice(0, -6) : colour);
  if (at < 0) throw new RangeError(`"${colour}" is no colour`);
  return String((bright ? 90 : 30) + at);
};

const sequence = (codes: readonly string[]): string =>
  codes.map((code) => `\u001b[${code}m`).join('');

const paintText = (text: string, style: Style | undefined): string => {
  if (style === undefined || text === '') return text;
  const open: string[] = [];
  const close: string[] = [];
  const add = (opens: string, closes: string): void => {
    open.push(opens);
    close.unshift(closes);
  };
  if (style.color !== undefined) add(colourCode(style.color), '39');
  if (style.bold === true) add('1', '22');
  if (style.underline === true) add('4', '24');
  if (style.inverse === true) add('7', '27');
  return sequence(open) + text + sequence(close);
};

export const paint = (line: Line): string =>
  line.map(({ text, style }) => paintText(text, style)).join('');
