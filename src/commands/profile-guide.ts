// The questions a new profile needs, at the keyboard: what is told already is not asked, Enter takes what is usual.
import { cleanText } from '../core/clean-text.js';
import { pinList } from '../core/profile/blank-profile.js';
import { name as lineName } from '../core/profile/profile-format.js';
import type { ProfileWords } from '../core/words/profile-words.js';
import type { Asking } from './asking.js';

/** As the options say it. */
export interface NewProfile {
  readonly title?: string;
  readonly pins?: string;
  readonly rows?: string;
  readonly numbering?: string;
  readonly grounds?: string;
  readonly supplies?: string;
  readonly unused?: string;
  readonly names?: string;
}

const numberings = ['row-wise', 'odd-even', 'around'] as const;

export const askProfile = async (
  told: NewProfile,
  { ask, say }: Asking,
  words: ProfileWords,
): Promise<NewProfile> => {
  const until = async (question: string, fault: (answer: string) => string | null) => {
    for (;;) {
      const answer = await ask(question);
      const wrong = fault(answer);
      if (wrong === null) return answer;
      say(wrong);
    }
  };
  const title = told.title ?? (await ask(words.askTitle));
  const count =
    told.pins ??
    (await until(words.askPins, (answer) =>
      isCount(answer) ? null : words.noCount(cleanText(answer, 20)),
    ));
  const taken = new Map<string, string>();
  const pins = async (question: string, kind: string): Promise<string> => {
    const answer = await until(question, (text) => faultInPins(text, Number(count), taken, words));
    for (const pin of pinList(answer)) taken.set(pin, kind);
    return answer;
  };
  const rows = told.rows ?? ((await ask(words.askRows)) === '1' ? '1' : '2');
  const numbering =
    told.numbering ??
    (rows === '1'
      ? 'row-wise'
      : (numberings[Number(await ask(words.askNumbering)) - 1] ?? 'row-wise'));
  return {
    title: title === '' ? words.untitled : title,
    pins: count,
    rows,
    numbering,
    grounds: told.grounds ?? (await pins(words.askGrounds, words.ground)),
    supplies: told.supplies ?? (await pins(words.askSupplies, words.supply)),
    unused: told.unused ?? '',
    names:
      told.names ??
      (await until(words.askNames, (text) => faultInNames(text, Number(count), words))),
  };
};

export const isCount = (text: string): boolean =>
  /^[1-9]\d{0,3}$/u.test(text) && Number(text) <= 2000;

const faultInPins = (
  text: string,
  count: number,
  taken: ReadonlyMap<string, string>,
  words: ProfileWords,
): string | null => {
  try {
    for (const pin of pinList(text)) {
      if (Number(pin) < 1 || Number(pin) > count) return words.noPin(pin, count);
      const kind = taken.get(pin);
      if (kind !== undefined) return words.taken(pin, kind);
    }
    return null;
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
};

const faultInNames = (text: string, count: number, words: ProfileWords): string | null => {
  const names = text === '' ? [] : text.split(',').map((name) => name.trim());
  if (names.length > count) return words.tooManyNames(names.length, count);
  const bad = names.find((name) => !lineName.safeParse(name).success && name !== '');
  return bad === undefined ? null : words.noName(cleanText(bad, 40));
};
