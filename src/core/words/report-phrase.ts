// Text for a report that keeps apart what a catalogue says and what came from a meter, a file or a person, so
// that every form (HTML, Markdown) can set the latter apart and make it harmless. Foreign text is cleaned here.
import { cleanText } from '../clean-text.js';

/** `name`: a pin, line, part or id. `value`: figures with their unit, a time. `text`: words of any language. */
export type DatumKind = 'name' | 'value' | 'text';

export interface Datum {
  readonly as: DatumKind;
  readonly text: string;
}

/** Plain strings are the catalogue's own words. */
export type Phrase = string | readonly (string | Datum)[];

const longestName = 120;
const longestText = 600;
const longestBrief = 120;

const datum =
  (as: DatumKind, longest: number) =>
  (text: string): Datum => ({ as, text: cleanText(text, longest) });

export const name = datum('name', longestName);
export const value = datum('value', longestName);
export const foreign = datum('text', longestText);
/** For a page on which room is short. */
export const brief = datum('text', longestBrief);

/**
 * Joins words, data and other phrases into one phrase.
 * @example say`Pin ${name('5')} reads ${value('1.4 kΩ')}`
 */
export const say = (
  words: TemplateStringsArray,
  ...data: readonly (Phrase | Datum | number)[]
): Phrase =>
  words.flatMap((word, at) => {
    const given = data[at];
    return given === undefined ? [word] : [word, ...piecesOf(given)];
  });

/** Phrases one after the other, with `separator` between them. */
export const join = (phrases: readonly (Phrase | Datum)[], separator: string): Phrase =>
  phrases.flatMap((phrase, at) => [...(at === 0 ? [] : [separator]), ...piecesOf(phrase)]);

export const piecesOf = (phrase: Phrase | Datum | number): readonly (string | Datum)[] => {
  if (typeof phrase === 'number') return [String(phrase)];
  if (typeof phrase === 'string') return [phrase];
  return 'as' in phrase ? [phrase] : phrase;
};

/** The words alone, for places that hold nothing but text. */
export const plain = (phrase: Phrase): string =>
  piecesOf(phrase)
    .map((piece) => (typeof piece === 'string' ? piece : piece.text))
    .join('');
