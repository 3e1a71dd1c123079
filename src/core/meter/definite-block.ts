// Reads a definite-length block, `#<n><len><data>` (IEEE 488.2, 8.7.9): the data is counted, never searched.
// The indefinite form `#0` is refused, because nothing in a line tells where it ends.

/**
 * The data of a block that is the whole text, or null where the text is not exactly one block.
 * @example parseDefiniteBlock('#15hello') // 'hello'
 */
export const parseDefiniteBlock = (text: string): string | null => {
  const digits = /^#([1-9])/u.exec(text)?.[1];
  if (digits === undefined) return null;
  const start = 2 + Number(digits);
  const length = text.slice(2, start);
  if (length.length !== Number(digits) || !/^\d+$/u.test(length)) return null;
  const data = text.slice(start);
  return data.length === Number(length) ? data : null;
};
