// Words and readings in large letters, or null where a letter is missing: another script is then shown as text.
import { largeDigits } from './large-digits.js';
import { beside, doubled, type Picture } from './picture.js';
import { smallLetters } from './small-letters.js';

const lettersOf = (
  text: string,
  letters: Readonly<Record<string, Picture>>,
  gap: number,
): Picture | null => {
  const pictures: Picture[] = [];
  for (const character of text) {
    const picture = letters[character] ?? letters[character.toUpperCase()];
    if (picture === undefined) return null;
    pictures.push(picture);
  }
  return pictures.length === 0 ? null : beside(pictures, gap);
};

/** Three rows high, or six when doubled. */
export const bigWord = (text: string, twice = false): Picture | null => {
  const picture = lettersOf(text, smallLetters, 1);
  return picture !== null && twice ? doubled(picture) : picture;
};

/** Three rows, five, or ten; `double-plain` has its unit no larger than five rows would have it. */
export type ReadingSize = 'small' | 'large' | 'double' | 'double-plain';

/** The unit stands smaller beside the digits. */
export const bigReading = (digits: string, unit: string, size: ReadingSize): Picture | null => {
  if (size === 'small') return bigWord(unit === '' ? digits : `${digits} ${unit}`);
  const number = lettersOf(digits, largeDigits, 1);
  if (number === null) return null;
  const scaled = size === 'large' ? number : doubled(number);
  if (unit === '') return scaled;
  const beneath = bigWord(unit, size === 'double');
  return beneath === null ? null : beside([scaled, beneath], size === 'large' ? 2 : 4);
};
