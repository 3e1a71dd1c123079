// Text for terminals that show ASCII only: what the trade writes when it has no other letters.

const substitutes: Readonly<Record<string, string>> = {
  Ω: 'ohm',
  µ: 'u',
  μ: 'u',
  '±': '+/-',
  '·': '-',
  '…': '...',
  '→': '->',
  '×': 'x',
  '°': 'deg',
  '–': '-',
  '—': '-',
  '’': "'",
  '“': '"',
  '”': '"',
};

const notAscii = /[^\u0020-\u007e]/gu;

export const plainLetters = (text: string): string =>
  text.replace(notAscii, (character) => substitutes[character] ?? '?');
