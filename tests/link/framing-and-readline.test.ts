// Why the framer cuts lines on every link and @serialport/parser-readline does not: where both can do the work
// they agree; the second half shows what the parser cannot do. If one of those tests fails, the parser has
// learnt it and the decision can be taken again.
import { ReadlineParser } from '@serialport/parser-readline';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFramer } from '../../src/core/framing.js';

const parserLines = (chunks: readonly Uint8Array[]): string[] => {
  const parser = new ReadlineParser({ delimiter: '\n', encoding: 'latin1' });
  const lines: string[] = [];
  parser.on('data', (line: string) => lines.push(line));
  for (const chunk of chunks) parser.write(Buffer.from(chunk));
  return lines;
};

const framerLines = (chunks: readonly Uint8Array[], maxFrame = 80): string[] => {
  const framer = createFramer({ maxFrame, encoding: 'latin1', dropFirstPartial: false });
  return chunks.flatMap((chunk) => framer.push(chunk).map(({ text }) => text));
};

const text = (...lines: string[]): Uint8Array[] => lines.map((line) => Buffer.from(line, 'latin1'));

describe('the framer and ReadlineParser', () => {
  it('should agree on short lines that end with LF, however they are chunked', () => {
    const sign = fc.integer({ min: 0x20, max: 0xff });
    const line = fc.array(sign, { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), fc.array(fc.nat(200)), (lines, cuts) => {
        const bytes = Uint8Array.from(lines.flatMap((signs) => [...signs, 0x0a]));
        const at = [0, ...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length].sort(
          (a, b) => a - b,
        );
        const chunks = at.slice(1).map((end, i) => bytes.subarray(at[i], end));
        expect(framerLines(chunks)).toEqual(parserLines(chunks));
      }),
      { seed: 13 },
    );
  });

  it('should differ on CR and CRLF', () => {
    expect(parserLines(text('1\r\n2\r3\n'))).toEqual(['1\r', '2\r3']);
    expect(framerLines(text('1\r\n2\r3\n'))).toEqual(['1', '2', '3']);
  });

  it('should differ on a line without end: the parser keeps it all', () => {
    const flood = '7'.repeat(1_000_000);
    expect(parserLines(text(flood, '\n'))).toEqual([flood]);
    expect(framerLines(text(flood, '\n'))).toEqual(['7'.repeat(80)]);
  });
});
