// The last gate before a text reaches a voice: letters, digits and plain punctuation, so that nothing from a
// file can be an option, a markup or a command to whatever reads it.

const longest = 160;

/** @example speakable('-v [[zz]] hot!') // 'v zz hot' */
export const speakable = (text: string): string => {
  const plain = text
    .slice(0, 4 * longest)
    .replace(/[^\p{L}\p{M}\p{N},.:;?' -]+/gu, ' ')
    .replace(/ +/gu, ' ')
    .replace(/^[^\p{L}\p{N}]+/u, '');
  return Array.from(plain).slice(0, longest).join('').trimEnd();
};
