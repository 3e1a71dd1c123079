// A line of the screen as spans of one style each. Everything the parts draw is made of these, so that widths
// are counted in one place and Ink only prints.

import { showUnsafe } from '../../core/clean-text.js';
import type { Style, Theme } from '../theme.js';
import { columnsOf } from './columns.js';
import { plainLetters } from './plain-letters.js';

export interface Span {
  readonly text: string;
  readonly style?: Style;
}

export type Line = readonly Span[];

/** Whatever the text came from, nothing in it acts on the terminal or upsets the count of columns. */
export const span = (text: string, style?: Style): Span =>
  style === undefined ? { text: showUnsafe(text) } : { text: showUnsafe(text), style };

export const widthOf = (line: Line): number =>
  line.reduce((sum, { text }) => sum + columnsOf(text), 0);

/** `text` cut to `width` columns; a cut shows. */
export const cutText = (text: string, width: number, more: string): string => {
  if (columnsOf(text) <= width) return text;
  let kept = '';
  for (const character of text) {
    if (columnsOf(kept + character) > width - 1) break;
    kept += character;
  }
  return width <= 0 ? '' : kept + more;
};

/** What the terminal can show of a line. */
const showable = (line: Line, { unicode }: Theme): Line =>
  unicode ? line : line.map((part) => ({ ...part, text: plainLetters(part.text) }));

/** Left and right ends with space between; the left one gives way. */
export const spread = (left: Line, right: Line, width: number, theme: Theme): Line => {
  const end = showable(right, theme);
  const begin = cutLine(left, Math.max(0, width - widthOf(end) - 1), theme);
  return [...begin, span(' '.repeat(Math.max(0, width - widthOf(begin) - widthOf(end)))), ...end];
};

export const cutLine = (line: Line, width: number, theme: Theme): Line => {
  const kept: Span[] = [];
  let left = width;
  for (const part of showable(line, theme)) {
    const text = cutText(part.text, left, theme.line.more);
    if (text !== '') kept.push({ ...part, text });
    if (text !== part.text) break;
    left -= columnsOf(text);
  }
  return kept;
};

export const padTo = (line: Line, width: number): Line => {
  const missing = width - widthOf(line);
  return missing > 0 ? [...line, span(' '.repeat(missing))] : line;
};

/** Words broken into lines no wider than `width`; a word too long is cut by the screen's edge. */
export const wrapText = (text: string, width: number): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && columnsOf(longer) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
};
