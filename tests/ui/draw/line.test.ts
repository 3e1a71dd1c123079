import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cutLine,
  cutText,
  padTo,
  span,
  spread,
  widthOf,
  wrapText,
} from '../../../src/ui/draw/line.js';
import { colourCode, paint } from '../../../src/ui/draw/paint.js';
import { createTheme } from '../../../src/ui/theme.js';

const theme = createTheme({ colours: 'full', background: 'dark', unicode: true });
const ascii = createTheme({ colours: 'none', background: 'dark', unicode: false });
const text = (line: ReturnType<typeof spread>): string => line.map((part) => part.text).join('');

describe('lines', () => {
  it('should cut by columns, and show the cut', () => {
    expect(cutText('LANE0_P', 5, '…')).toBe('LANE…');
    expect(cutText('線路', 3, '…')).toBe('線…');
    expect(cutText('abc', 3, '…')).toBe('abc');
    expect(cutText('abc', 0, '…')).toBe('');
  });

  it('should let the left end give way to the right one', () => {
    expect(text(spread([span('left')], [span('right')], 12, theme))).toBe('left   right');
    expect(text(spread([span('a long left')], [span('right')], 10, theme))).toBe('a l… right');
  });

  it('should measure what is shown: without Unicode an ohm sign is a word', () => {
    expect(text(spread([span('5 Ω')], [span('µ')], 8, ascii))).toBe('5 ohm  u');
  });

  it('should never be wider than it may be', () => {
    const parts = fc.array(fc.string({ unit: 'grapheme', maxLength: 12 }), { maxLength: 5 });
    fc.assert(
      fc.property(parts, fc.nat(40), (texts, width) => {
        const line = texts.map((part) => span(part));
        expect(widthOf(cutLine(line, width, theme))).toBeLessThanOrEqual(width);
        expect(widthOf(padTo(cutLine(line, width, theme), width))).toBe(width);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('should break between words and keep every word', () => {
    expect(wrapText('one two three four', 9)).toEqual(['one two', 'three', 'four']);
    expect(wrapText('', 9)).toEqual(['']);
  });
});

describe('painting', () => {
  it('should open and close each style by its own code', () => {
    const painted = paint([span('a', { bold: true, color: '#0a0b0c' }), span('b')]);
    expect(painted).toBe('\u001b[38;2;10;11;12m\u001b[1ma\u001b[22m\u001b[39mb');
    expect(paint([span('x', { inverse: true, underline: true })])).toBe(
      '\u001b[4m\u001b[7mx\u001b[27m\u001b[24m',
    );
  });

  it.each([
    ['cyan', '36'],
    ['redBright', '91'],
    ['gray', '90'],
    ['ansi256(79)', '38;5;79'],
    ['#ffffff', '38;2;255;255;255'],
  ])('should set %s by %s', (colour, code) => {
    expect(colourCode(colour)).toBe(code);
  });

  it('should refuse what is no colour', () => {
    expect(() => colourCode('greenish')).toThrow(RangeError);
  });
});

describe('a span', () => {
  it('should show what would act on the terminal, and count its columns so', () => {
    const hostile = span('a\u001b[31m\u202eb\nc\u200b');
    expect(hostile.text).toBe('a␛[31m\ufffdb␊c\ufffd');
    expect(widthOf([hostile])).toBe(11);
  });
});
