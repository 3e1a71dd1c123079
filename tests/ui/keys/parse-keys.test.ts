import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseKeys } from '../../../src/ui/keys/parse-keys.js';

const esc = '\u001b';
const names = (text: string, ended = true): string[] =>
  parseKeys(text, ended).keys.map(({ name }) => name);

// What a terminal sends for each was seen with tmux; the tables are those of ECMA-48 and xterm, from memory.
const known: readonly (readonly [string, string])[] = [
  [' ', 'space'],
  ['\r', 'enter'],
  ['\t', 'tab'],
  ['\u007f', 'backspace'],
  ['\u0003', 'ctrl+c'],
  ['\u0000', 'ctrl+space'],
  [esc, 'escape'],
  [`${esc}[A`, 'up'],
  [`${esc}OA`, 'up'],
  [`${esc}[D`, 'left'],
  [`${esc}[6~`, 'pagedown'],
  [`${esc}[H`, 'home'],
  [`${esc}OP`, 'f1'],
  [`${esc}[11~`, 'f1'],
  [`${esc}[15~`, 'f5'],
  [`${esc}[24~`, 'f12'],
  [`${esc}[25~`, 'f13'],
  [`${esc}[1;2P`, 'shift+f1'],
  [`${esc}[15;5~`, 'ctrl+f5'],
  [`${esc}[[A`, 'f1'],
  [`${esc}[Z`, 'shift+tab'],
  [`${esc}x`, 'alt+x'],
  ['ü', 'ü'],
  ['𝛀', '𝛀'],
];

describe('keys', () => {
  it.each(known)('should call %j %s', (sent, name) => {
    expect(names(sent)).toEqual([name]);
  });

  it('should name an unknown sequence by its bytes, so that any pedal can be bound', () => {
    expect(names(`${esc}[99~`)).toEqual(['seq:1b5b39397e']);
    expect(names(`${esc}[57376u`)).toEqual(['seq:1b5b353733373675']);
  });

  it('should take several characters in one chunk for several keys', () => {
    expect(names('ab\r')).toEqual(['a', 'b', 'enter']);
    expect(names(`${esc}[A${esc}[B`)).toEqual(['up', 'down']);
  });

  it('should keep a sequence that is cut until its end comes', () => {
    const cut = parseKeys(`${esc}[`);
    expect(cut).toEqual({ keys: [], rest: `${esc}[` });
    expect(parseKeys(`${cut.rest}6~`).keys).toEqual([{ name: 'pagedown', text: '' }]);
  });

  it('should take what stays cut for an escape and plain characters', () => {
    expect(names(`${esc}[`, true)).toEqual(['escape', '[']);
    expect(parseKeys(esc)).toEqual({ keys: [], rest: esc });
  });

  it('should take pasted text as one thing that is no key', () => {
    const { keys } = parseKeys(`${esc}[200~qq\rsecret${esc}[201~n`);
    expect(keys).toEqual([
      { name: 'paste', text: 'qq\rsecret', pasted: true },
      { name: 'n', text: 'n' },
    ]);
    expect(parseKeys(`${esc}[200~qq`, true)).toEqual({ keys: [], rest: `${esc}[200~qq` });
  });

  it('should give the same keys however the bytes are cut', () => {
    const sent = fc.array(
      fc.constantFrom(...known.map(([bytes]) => bytes).filter((b) => b !== esc)),
    );
    fc.assert(
      fc.property(sent, fc.array(fc.nat(40)), (parts, cuts) => {
        const whole = parts.join('');
        let rest = '';
        const keys: string[] = [];
        let from = 0;
        for (const cut of [...cuts.sort((a, b) => a - b), whole.length]) {
          // A character is never cut: bytes are decoded before.
          const to = Math.max(from, Math.min(cut, whole.length));
          const end = isInsidePair(whole, to) ? to + 1 : to;
          const parsed = parseKeys(rest + whole.slice(from, end));
          rest = parsed.rest;
          keys.push(...parsed.keys.map(({ name }) => name));
          from = end;
        }
        expect(keys).toEqual(names(whole, false));
        expect(rest).toBe('');
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('should take any text without losing hold of it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const { keys, rest } = parseKeys(text, true);
        expect(rest === '' || rest.includes(`${esc}[200~`)).toBe(true);
        expect(keys.every(({ name }) => name !== '')).toBe(true);
      }),
      { seed: 8, numRuns: 300 },
    );
  });
});

const isInsidePair = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at);
  return code >= 0xdc00 && code <= 0xdfff;
};
