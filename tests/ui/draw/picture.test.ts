import { describe, expect, it } from 'vitest';
import { bigReading, bigWord } from '../../../src/ui/draw/big-text.js';
import { largeDigits } from '../../../src/ui/draw/large-digits.js';
import {
  beside,
  doubled,
  drawn,
  printPicture,
  stamped,
  widthOfPicture,
} from '../../../src/ui/draw/picture.js';
import { smallLetters } from '../../../src/ui/draw/small-letters.js';

describe('pictures', () => {
  it('should print two rows of dots in one row of text', () => {
    const picture = drawn('##.', '#.#', '..#');
    expect(printPicture(picture, true)).toEqual(['█▀▄', '  ▀']);
    expect(printPicture(picture, false)).toEqual(['#",', '  "']);
  });

  it('should stand pictures on one line', () => {
    const picture = beside([drawn('#', '#', '#'), drawn('#')], 1);
    expect(printPicture(picture, true)).toEqual(['█  ', '▀ ▀']);
  });

  it('should cut a picture out of its stamp', () => {
    const stamp = stamped(drawn('.#.', '###'), { x: 1, y: 1 }, 1);
    expect(stamp.map((row) => row.map((ink) => (ink ? '#' : '.')).join(''))).toEqual([
      '.###.',
      '##.##',
      '#...#',
      '.###.',
    ]);
  });

  it('should double a picture and turn its stairs into slopes', () => {
    const show = (rows: ReturnType<typeof doubled>): string[] =>
      rows.map((row) => row.map((ink) => (ink ? '#' : '.')).join(''));
    expect(show(doubled(drawn('##', '##')))).toEqual(['.##.', '####', '####', '.##.']);
    expect(show(doubled(drawn('...', '###', '...')))).toEqual([
      '......',
      '......',
      '######',
      '######',
      '......',
      '......',
    ]);
  });
});

describe('large letters', () => {
  it('should have all of one height and no two alike', () => {
    const heights = new Set(Object.values(smallLetters).map((picture) => picture.length));
    expect([...heights]).toEqual([6]);
    const tall = new Set(Object.values(largeDigits).map((picture) => picture.length));
    expect([...tall]).toEqual([10]);
    for (const letters of [smallLetters, largeDigits]) {
      const drawings = Object.values(letters).map((picture) =>
        printPicture(picture, true).join('|'),
      );
      expect(new Set(drawings).size).toBe(drawings.length);
    }
  });

  it('should have rows of one length in every letter', () => {
    for (const [name, picture] of [
      ...Object.entries(smallLetters),
      ...Object.entries(largeDigits),
    ]) {
      expect(new Set(picture.map((row) => row.length)).size, name).toBe(1);
      expect(picture.flat().some(Boolean) || name === ' ', name).toBe(true);
    }
  });

  it('should make all digits equally wide, so that a changing reading stands still', () => {
    const widths = [...'0123456789'].map((digit) => widthOfPicture(largeDigits[digit] ?? []));
    expect(new Set(widths).size).toBe(1);
  });

  it('should draw readings three, five and ten rows high', () => {
    const rows = (size: 'small' | 'large' | 'double'): number =>
      printPicture(bigReading('389.6', 'Ω', size) ?? [], true).length;
    expect([rows('small'), rows('large'), rows('double')]).toEqual([3, 5, 10]);
  });

  it('should leave to text what it has no letters for', () => {
    expect(bigWord('Öl')).toBeNull();
    expect(bigWord('')).toBeNull();
    expect(bigReading('389.6', 'Å', 'large')).toBeNull();
    expect(bigWord('open?')).not.toBeNull();
  });
});
