// A session file in which any one byte was changed, or any line moved, doubled or taken out: the change is found,
// and at the right line.
import { readFileSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isError } from '../../src/core/problems.js';
import { checkFile } from '../../src/store/check-file.js';
import { checkSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { resumeJournal } from '../../src/store/resume-journal.js';
import { reading, resumed, sample, temporaryFolder } from '../store/sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

/** With a torn line inside, which the session itself explains. */
const session = async (): Promise<{ bytes: Buffer; fingerprint: string }> => {
  const path = folder.path('whole.jsonl');
  const first = createJournal(path);
  first.append(sample);
  await first.close();
  writeFileSync(path, '{"seq":6,"t":3,"ty', { flag: 'a' });
  const { journal, tornBytes } = resumeJournal(path);
  journal.append([resumed(5, tornBytes), ...[6, 7, 8, 9].map(reading)]);
  await journal.close();
  return { bytes: readFileSync(path), fingerprint: journal.fingerprint };
};

const tornLine = sample.length + 1;

/** A torn line has no mark of its own, and without the line that explains it stands unexplained. */
const linesNamedFor = (line: number): number[] => {
  if (line === tornLine) return [tornLine - 1];
  return line === tornLine + 1 ? [line, tornLine] : [line];
};

const check = (bytes: Uint8Array) => {
  const path = folder.path('changed.jsonl');
  writeFileSync(path, bytes);
  const lines: number[] = [];
  const { chain, tornBytes } = checkSession(path, (problem) => {
    if (isError(problem)) lines.push(problem.line ?? 0);
  });
  return { lines, chain, tornBytes };
};

const lineAt = (bytes: Buffer, at: number): number =>
  bytes.subarray(0, at).filter((byte) => byte === 10).length + 1;

describe('a changed session', () => {
  it('should be what it was while nothing is changed', async () => {
    const { bytes, fingerprint } = await session();
    expect(check(bytes)).toEqual({ lines: [], chain: fingerprint, tornBytes: 0 });
  });

  it('should show any one byte changed to any other, at its line', async () => {
    const { bytes, fingerprint } = await session();
    const last = lineAt(bytes, bytes.length - 1);
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const changed = Buffer.from(bytes);
        changed[at] = (bytes[at] ?? 0) ^ flip;
        const line = lineAt(bytes, at);
        const { lines, chain, tornBytes } = check(changed);
        const isSeparator = bytes[at] === 10 || changed[at] === 10;
        if (line === last) {
          // Nothing follows the last line: only its own form and the noted fingerprint speak for it.
          expect(lines.length > 0 || tornBytes > 0 || chain !== fingerprint).toBe(true);
        } else if (isSeparator) {
          expect(lines.length > 0 || tornBytes > 0).toBe(true);
        } else {
          expect(linesNamedFor(line)).toContain(lines[0]);
        }
      }),
      { seed: 11, numRuns: 4000 },
    );
  });

  it('should show every line taken out, doubled or moved', async () => {
    const { bytes } = await session();
    const lines = bytes.toString('latin1').split('\n').slice(0, -1);
    const join = (changed: string[]) =>
      check(Buffer.from(`${changed.join('\n')}\n`, 'latin1')).lines;
    let tried = 0;
    for (let at = 0; at < lines.length; at += 1) {
      const before = lines.slice(0, at);
      const line = lines[at] ?? '';
      const after = lines.slice(at + 1);
      expect(join([...before, line, line, ...after])).not.toEqual([]);
      expect(join([...before, '', line, ...after])).not.toEqual([]);
      if (after.length === 0) continue;
      expect(join([...before, ...after])).not.toEqual([]);
      expect(join([...before, after[0] ?? '', line, ...after.slice(1)])).not.toEqual([]);
      tried += 1;
    }
    expect(tried).toBe(lines.length - 1);
  });

  it('should show lines taken off the end by its fingerprint', async () => {
    const { bytes, fingerprint } = await session();
    const shorter = bytes.subarray(0, bytes.lastIndexOf(10, bytes.length - 2) + 1);
    const { lines, chain } = check(shorter);
    expect(lines).toEqual([]);
    expect(chain).not.toBe(fingerprint);
  });

  it('should be refused for going on, and left as it is', async () => {
    const { bytes } = await session();
    const changed = Buffer.from(bytes);
    const at = bytes.indexOf('overload') + 3;
    changed[at] = 'X'.charCodeAt(0);
    const path = folder.path('refused.jsonl');
    writeFileSync(path, changed);
    expect(() => resumeJournal(path)).toThrow(
      expect.objectContaining({
        name: 'FileError',
        message: expect.stringContaining(`${path}:5: `),
      }),
    );
    expect(readFileSync(path)).toEqual(changed);
    expect(checkFile(path).problems).toHaveLength(1);
  });

  it('should tell a changed mark from a changed event', async () => {
    const { bytes } = await session();
    const lines = bytes.toString('utf8').split('\n');
    const withLine = (index: number, change: (line: string) => string) =>
      Buffer.from(lines.map((line, at) => (at === index ? change(line) : line)).join('\n'));
    const swapHex = (line: string) =>
      line.replace(/"prev":"(.)/u, (_, digit) => `"prev":"${digit === 'a' ? 'b' : 'a'}`);
    const problemsOf = (changed: Buffer) => {
      writeFileSync(folder.path('c.jsonl'), changed);
      return checkFile(folder.path('c.jsonl')).problems.map(({ line, what }) => `${line}: ${what}`);
    };
    expect(problemsOf(withLine(3, swapHex))).toEqual([
      '4: "prev" on this line was changed after it was written',
    ]);
    expect(problemsOf(withLine(3, (line) => line.replace('"t":1', '"t":2')))).toEqual([
      '4: this line was changed after it was written',
    ]);
  });
});
