import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readCase, readCases } from '../../src/store/read-cases.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const recorded = (name: string): string =>
  fileURLToPath(new URL(`../../recordings/sessions/${name}.jsonl`, import.meta.url));

const put = (text: string | Uint8Array): string => {
  const path = join(temporaryFolder(), 's.jsonl');
  writeFileSync(path, text);
  return path;
};
const whole = (): string => readFileSync(recorded('loose-filter'), 'utf8');

describe('reading what sessions say of their boards', () => {
  it('should find what pressing found in a recorded session', () => {
    const found = readCase(recorded('loose-filter'));
    expect(found).toMatchObject({ profile: 'demo', simulated: true, done: true });
    expect([...found.causes]).toEqual([['FL2', 'found']]);
    expect([...readCase(recorded('healthy-board')).causes]).toEqual([]);
  });

  it('should bear a last line that was never finished, and one that was taken up again', () => {
    const text = whole();
    expect(readCase(put(`${text}{"seq":99,"t":1,"ty`)).profile).toBe('demo');
    const resumed = '{"seq":99,"t":1,"type":"session-resumed"}';
    expect(readCase(put(`${text}{"seq":99,"t":1,"ty\n${resumed}\n`)).profile).toBe('demo');
  });

  it.each([
    ['', 1, 'no session in it'],
    ['not a session\n', 1, 'no session in it'],
    ['{"seq":0,"t":0,"type":"pin-judged"}\n', 1, 'header'],
    ['{"seq":0,"t":0,"type":"session-opened","format":"pinwalk-session/7"}\n', 1, 'reads'],
    ['\u0000\u0001\n\u0002\n', 1, 'not one whole event'],
  ])('should refuse %j at line %i', (text, line, says) => {
    expect(() => readCase(put(text))).toThrow(new RegExp(`:${line}: error: .*${says}`, 'u'));
  });

  it('should refuse a file with damage in its middle, at its line', () => {
    const lines = whole().split('\n');
    lines[9] = 'x';
    expect(() => readCase(put(lines.join('\n')))).toThrow(/:10: error: the line is not one whole/u);
  });

  it('should go on after a broken file, and take nothing but sessions', () => {
    const folder = temporaryFolder();
    copyFileSync(recorded('loose-filter'), join(folder, 'a.jsonl'));
    writeFileSync(join(folder, 'b.jsonl'), 'broken');
    writeFileSync(join(folder, 'notes.txt'), 'x');
    const found = [...readCases(folder)].map((one) => [basename(one.path), 'case' in one]);
    expect(found.sort()).toEqual([
      ['a.jsonl', true],
      ['b.jsonl', false],
    ]);
    expect(() => [...readCases(join(folder, 'none'))]).toThrow(/the folder cannot be read/u);
  });
});
