// Brings SCPI program messages to one spelling, so that long and short mnemonics, any case, with or without the
// leading colon, compare alike. Does not know the long words: a spelling between the two forms passes as well.

const vowel = /[AEIOU]/u;

/**
 * The short form of a mnemonic by the rule of SCPI-1999, 6.2.1 (clause from memory): words of up to four
 * letters stay, longer ones keep four, or three where the fourth is a vowel. A number at the end is kept.
 * @example shortForm('RESistance') // 'RES'
 */
export const shortForm = (mnemonic: string): string => {
  const [, letters = '', digits = ''] = /^([^\d]*)(\d*)$/u.exec(mnemonic.toUpperCase()) ?? [];
  if (letters.length <= 4) return letters + digits;
  return letters.slice(0, vowel.test(letters[3] ?? '') ? 3 : 4) + digits;
};

/** A message taken apart: header in short form, such as `MEAS:RES?` or `*IDN?`, and parameters in capitals. */
export interface ScpiMessage {
  readonly header: string;
  readonly parameters: string;
}

const normal = (parameters: string): string =>
  parameters.toUpperCase().replaceAll("'", '"').replace(/ ?, ?/gu, ',');

export const readMessage = (text: string): ScpiMessage => {
  const [written = '', ...rest] = text.trim().split(/\s+/u);
  const isQuery = written.endsWith('?');
  const nodes = (isQuery ? written.slice(0, -1) : written).replace(/^:/u, '').split(':');
  const header = nodes.map((node) => (node.startsWith('*') ? node.toUpperCase() : shortForm(node)));
  return { header: header.join(':') + (isQuery ? '?' : ''), parameters: normal(rest.join(' ')) };
};

/** Parts a line at its semicolons, save those in quotes. */
export const splitMessages = (line: string): string[] =>
  (line.match(/(?:"[^"]*"|'[^']*'|[^;"']|["'])+/gu) ?? []).filter((part) => part.trim() !== '');
