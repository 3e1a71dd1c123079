import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { byteLines } from '../../src/store/byte-lines.js';
import { temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const linesOf = (bytes: Uint8Array) => {
  const path = folder.path('bytes');
  writeFileSync(path, bytes);
  return [...byteLines(path)].length === 0
    ? []
    : Array.from(byteLines(path), ({ buffer, from, to, ended }) => ({
        text: buffer.toString('latin1', from, to),
        ended,
      }));
};

/** The same by the plainest means. */
const splitOf = (bytes: Uint8Array) => {
  const parts = Buffer.from(bytes).toString('latin1').split('\n');
  const rest = parts.pop() ?? '';
  const ended = parts.map((text) => ({ text, ended: true }));
  return rest === '' ? ended : [...ended, { text: rest, ended: false }];
};

describe('cutting a file into lines', () => {
  it('should agree with splitting its whole text', () => {
    const bytes = fc.uint8Array({ maxLength: 60 }).map((all) => all.map((byte) => byte % 16));
    fc.assert(
      fc.property(bytes, (all) => {
        expect(linesOf(all)).toEqual(splitOf(all));
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it.each([1, 255, 4095, 262_143, 262_144, 262_145, 600_000])(
    'should hold lines of %i bytes, across every boundary of its reading',
    (length) => {
      const line = 'µ'.repeat(length).slice(0, length);
      const bytes = Buffer.from(`${line}\n${line}x\n\n${line}`);
      expect(linesOf(bytes)).toEqual(splitOf(bytes));
    },
  );

  it('should refuse a line without end', () => {
    const path = folder.path('endless');
    writeFileSync(path, Buffer.alloc(17 * 1024 * 1024, 'x'));
    expect(() => [...byteLines(path)]).toThrow(/endless:1: error: the line is longer than 16 MB/);
  });
});
