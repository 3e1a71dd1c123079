// A pin's name as it is spoken: "7" as "seven", "A12" as "A-twelve". Letters are spelled; hyphens keep a voice
// from reading a lone A as a word. Refuses nothing: what cannot be spoken is left out, and a long name ends early.
import type { SpokenWords } from '../words/spoken-words.js';

const mostSpelled = 12;

/** @example spokenPin('A12', englishSpoken) // 'A-twelve' */
export const spokenPin = (pin: string, words: SpokenWords): string => {
  const runs = pin.match(/\d+|[A-Za-z]|[^\dA-Za-z]/gu) ?? [];
  const said = runs.flatMap((run) => {
    if (/^\d/u.test(run)) return digits(run, words);
    if (/^[A-Za-z]/u.test(run)) return [run.toUpperCase()];
    return Object.hasOwn(words.sign, run) ? [words.sign[run] as string] : [];
  });
  return said.slice(0, mostSpelled).join('-') || words.somePin;
};

/** Up to three digits are a number; more, or a leading zero, are said one by one. */
const digits = (run: string, words: SpokenWords): readonly string[] =>
  run.length <= 3 && (run === '0' || !run.startsWith('0'))
    ? [words.number(Number(run))]
    : Array.from(run, (digit) => words.number(Number(digit)));
