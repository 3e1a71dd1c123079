// Names for what a terminal sends when a key is pressed. Every sequence has a name, known or not, so that any
// pedal can be bound: an unknown one is called by its bytes.

const finals: Readonly<Record<string, string>> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  E: 'middle',
  F: 'end',
  H: 'home',
  P: 'f1',
  Q: 'f2',
  R: 'f3',
  S: 'f4',
  Z: 'shift+tab',
};

const numbers: Readonly<Record<string, string>> = {
  1: 'home',
  2: 'insert',
  3: 'delete',
  4: 'end',
  5: 'pageup',
  6: 'pagedown',
  7: 'home',
  8: 'end',
  11: 'f1',
  12: 'f2',
  13: 'f3',
  14: 'f4',
  15: 'f5',
  17: 'f6',
  18: 'f7',
  19: 'f8',
  20: 'f9',
  21: 'f10',
  23: 'f11',
  24: 'f12',
  25: 'f13',
  26: 'f14',
  28: 'f15',
  29: 'f16',
  31: 'f17',
  32: 'f18',
  33: 'f19',
  34: 'f20',
};

/** The Linux console's own F1 to F5. */
const linuxConsole: Readonly<Record<string, string>> = {
  A: 'f1',
  B: 'f2',
  C: 'f3',
  D: 'f4',
  E: 'f5',
};

const modified = (name: string, modifier: string | undefined): string => {
  const bits = Number(modifier ?? '1') - 1;
  if (!(bits > 0)) return name;
  const shift = bits & 1 ? 'shift+' : '';
  const alt = bits & 2 ? 'alt+' : '';
  const ctrl = bits & 4 ? 'ctrl+' : '';
  return `${ctrl}${alt}${shift}${name}`;
};

const bytesOf = (sequence: string): string =>
  `seq:${[...Buffer.from(sequence, 'utf8')].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;

/** The name of an escape sequence. @example sequenceName('\u001b[15~'); // 'f5' */
export const sequenceName = (sequence: string): string => {
  const body = sequence.slice(1);
  const ss3 = /^O(\d*)([A-Z])$/u.exec(body);
  if (ss3 !== null) {
    const name = finals[ss3[2] ?? ''];
    if (name !== undefined) return modified(name, ss3[1] === '' ? undefined : ss3[1]);
  }
  const linux = /^\[\[([A-E])$/u.exec(body);
  if (linux !== null) return linuxConsole[linux[1] ?? ''] ?? bytesOf(sequence);
  const letter = /^\[(?:1;(\d+))?([A-Z])$/u.exec(body);
  if (letter !== null) {
    const name = finals[letter[2] ?? ''];
    if (name !== undefined) return modified(name, letter[1]);
  }
  const tilde = /^\[(\d+)(?:;(\d+))?~$/u.exec(body);
  if (tilde !== null) {
    const name = numbers[tilde[1] ?? ''];
    if (name !== undefined) return modified(name, tilde[2]);
  }
  return bytesOf(sequence);
};

/** The name of one character. @example characterName('\r'); // 'enter' */
export const characterName = (character: string): string => {
  const code = character.codePointAt(0) ?? 0;
  if (character === '\r' || character === '\n') return 'enter';
  if (character === '\t') return 'tab';
  if (character === ' ') return 'space';
  if (code === 0x7f || code === 0x08) return 'backspace';
  if (code === 0) return 'ctrl+space';
  if (code <= 0x1a) return `ctrl+${String.fromCharCode(0x60 + code)}`;
  if (code < 0x20) return bytesOf(character);
  return character;
};
