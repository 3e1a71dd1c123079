// A word on a filled ground. Its ends are half blocks, not styled spaces: trailing spaces are cut from a line.
import type { Style, Theme } from '../theme.js';
import { type Line, span } from './line.js';

export const chip = (text: string, style: Style, { line }: Theme): Line => {
  const { inverse: _, ...edge } = style;
  return [
    span(line.chipLeft, edge),
    span(text, { ...style, inverse: true }),
    span(line.chipRight, edge),
  ];
};
