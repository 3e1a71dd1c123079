// Makes hostile text safe for a terminal, a file and a report, and keeps every script readable. What could
// act instead of being read (controls, escape sequences, direction overrides) or hide (zero-width, line
// separators, lone surrogates) becomes one visible character; nothing is removed silently.

const replacement = '\uFFFD';
const ellipsis = '…';

/** Joiners are orthography between letters of these scripts, and a hiding place everywhere else. */
const joining =
  '[\\p{scx=Arab}\\p{scx=Syrc}\\p{scx=Deva}\\p{scx=Beng}\\p{scx=Guru}\\p{scx=Gujr}\\p{scx=Orya}\\p{scx=Taml}\\p{scx=Telu}\\p{scx=Knda}\\p{scx=Mlym}\\p{scx=Sinh}\\p{scx=Khmr}\\p{scx=Mymr}]';
const joiner = `(?<=${joining})[\\u200C\\u200D](?=${joining})`;
/** Without the letter after it, a joiner is a hiding place again. */
const cutJoiner = /[\u200C\u200D]$/u;
/** One emoji presentation selector after a pictograph is how such characters are commonly written. */
const emojiStyle = '(?<=\\p{Extended_Pictographic})\\uFE0F';
const unsafe =
  '[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}\\p{Bidi_Control}\\p{Default_Ignorable_Code_Point}\\p{Noncharacter_Code_Point}\\uFFF9-\\uFFFB]';
const kept = new RegExp(`(${joiner}|${emojiStyle})|${unsafe}`, 'gu');
/** Everything that may not be shown as it is. */
export const unsafeUnits = new RegExp(unsafe, 'gu');
/** Most texts are plain: looking for that costs little. */
const plain = /^[\x20-\x7e]*$/u;

/** More marks than any script stacks on one letter climb over the lines above. */
const markTower = /(\p{M}{6})\p{M}+/gu;

const visible = (char: string): string => {
  const code = char.codePointAt(0) ?? 0;
  if (code < 0x20) return String.fromCodePoint(0x2400 + code);
  return code === 0x7f ? '\u2421' : replacement;
};

export const hasUnsafe = (text: string): boolean =>
  !plain.test(text) && text.search(unsafeUnits) >= 0;

/** The whole text with every unsafe character shown. */
export const showUnsafe = (text: string): string =>
  plain.test(text)
    ? text
    : text
        .replace(kept, (match, harmless: string | undefined) => harmless ?? visible(match))
        .replace(markTower, `$1${replacement}`);

/**
 * Returns `text` with every unsafe character shown, at most `maxLength` code points long; a cut is marked
 * with `…`. Cleaning twice gives the same as cleaning once.
 * @throws RangeError when `maxLength` is not a positive whole number.
 * @example cleanText('\u001b[31mhot', 20) // '␛[31mhot'
 */
export const cleanText = (text: string, maxLength: number): string => {
  if (!Number.isInteger(maxLength) || maxLength < 1) {
    throw new RangeError(`maxLength must be a positive whole number, not ${maxLength}`);
  }
  // Two code units hold at least one code point: enough to cut, however long the rest is.
  const beginning = text.slice(0, 2 * maxLength + 2);
  const safe = showUnsafe(beginning);
  const points = Array.from(safe);
  if (points.length <= maxLength && beginning.length === text.length) return safe;
  const cut = points.slice(0, maxLength - 1).join('');
  return cut.replace(cutJoiner, '') + ellipsis;
};
