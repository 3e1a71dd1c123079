// Lines must come out the same however a link chunks the bytes, and nothing the far end sends may grow without
// bound.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFramer, type Frame, type FramerOptions } from '../../src/core/framing.js';
import { bytesOf } from '../../src/core/meter/wire-text.js';

const defaults: FramerOptions = { maxFrame: 16, encoding: 'ascii', dropFirstPartial: false };
const frames = (text: string, options: Partial<FramerOptions> = {}): Frame[] =>
  createFramer({ ...defaults, ...options }).push(bytesOf(text, options.encoding ?? 'latin1'));
const texts = (...args: Parameters<typeof frames>): string[] =>
  frames(...args).map(({ text }) => text);

describe('createFramer', () => {
  it('should cut at CR, LF and CRLF alike and leave empty lines out', () => {
    expect(texts('1.2\r3.4\n5.6\r\n\r\n\n7.8\n\r9')).toEqual(['1.2', '3.4', '5.6', '7.8']);
  });

  it('should keep blanks and everything else of a line', () => {
    expect(texts('  -1.2 \u0007\n')).toEqual(['  -1.2 \u0007']);
  });

  it('should keep an unfinished line for the next chunk', () => {
    const framer = createFramer(defaults);
    expect(framer.push(bytesOf('+2.0', 'ascii'))).toEqual([]);
    expect(framer.push(bytesOf('E+0\r', 'ascii'))).toEqual([{ text: '+2.0E+0' }]);
    expect(framer.push(bytesOf('\n', 'ascii'))).toEqual([]);
  });

  it('should drop the first partial line where the far end talks by itself', () => {
    expect(texts('.6 Ohm\r\n389.6 Ohm\r\n', { dropFirstPartial: true })).toEqual(['389.6 Ohm']);
    expect(texts('\n389.6 Ohm\n', { dropFirstPartial: true })).toEqual(['389.6 Ohm']);
    expect(texts(`${'x'.repeat(99)}\n1\n`, { dropFirstPartial: true })).toEqual(['1']);
  });

  it('should say once that a line is too long, then go on at the next one', () => {
    expect(frames(`${'9'.repeat(16)}\n${'8'.repeat(1000)}\n1.2\n`)).toEqual([
      { text: '9'.repeat(16) },
      { overlong: true, text: '8'.repeat(16) },
      { text: '1.2' },
    ]);
  });

  it('should not wait for the end of a line that never ends', () => {
    expect(frames('8'.repeat(17))).toEqual([{ overlong: true, text: '8'.repeat(16) }]);
  });

  it('should clean the beginning of an over-long line', () => {
    expect(frames(`\u001b[2J\u0085${'8'.repeat(99)}`, { encoding: 'latin1' })).toEqual([
      { overlong: true, text: `␛[2J\ufffd${'8'.repeat(11)}` },
    ]);
    const [long] = frames('8'.repeat(2000), { maxFrame: 1000 });
    expect(long?.text).toHaveLength(80);
  });

  it('should decode each line in the encoding asked for', () => {
    expect(
      createFramer({ ...defaults, encoding: 'latin1' }).push(Uint8Array.of(0xb5, 0x56, 0x93, 0x0a)),
    ).toEqual([{ text: 'µV\u0093' }]);
    expect(
      createFramer({ ...defaults, encoding: 'ascii' }).push(Uint8Array.of(0xb5, 0x56, 0x0a)),
    ).toEqual([{ text: '\ufffdV' }]);
    expect(texts('12 kΩ\n', { encoding: 'utf8' })).toEqual(['12 kΩ']);
    expect(
      createFramer({ ...defaults, encoding: 'utf8' }).push(
        Uint8Array.of(0x31, 0xce, 0x0a, 0xa9, 0x0a),
      ),
    ).toEqual([{ text: '1\ufffd' }, { text: '\ufffd' }]);
  });

  // IEEE Std 488.2, 8.7.9 (clause from memory); `#3512` + 512 bytes: Agilent N4903B guide p. 82.
  it('should count the data of a definite block instead of searching it', () => {
    const data = `${'x'.repeat(510)}\r\n`;
    expect(texts(`#3512${data}\n1\n`, { blocks: true, maxFrame: 600 })).toEqual([
      `#3512${data}`,
      '1',
    ]);
    expect(texts('#15he\nlo\n1\n', { blocks: true })).toEqual(['#15he\nlo', '1']);
    expect(texts('#10\n1\n', { blocks: true })).toEqual(['#10', '1']);
  });

  it('should search where no block is meant or announced', () => {
    expect(texts('#15he\nlo\n')).toEqual(['#15he', 'lo']);
    expect(texts('#0he\nlo\n#1x\n1#13\n\n#\n#2\n', { blocks: true })).toEqual([
      '#0he',
      'lo',
      '#1x',
      '1#13',
      '#',
      '#2',
    ]);
  });

  it('should not believe a block that announces more than the cap', () => {
    expect(frames('#9999999999abc\n1\n', { blocks: true })).toEqual([
      { overlong: true, text: '#9999999999' },
      { text: '1' },
    ]);
  });

  it.each([0, -1, 2.5])('should refuse the cap %s', (maxFrame) => {
    expect(() => createFramer({ ...defaults, maxFrame })).toThrow(RangeError);
  });

  it('should give the same frames for any chunking of any bytes', () => {
    const byte = fc.oneof(
      fc.constantFrom(0x0a, 0x0d, 0x23, 0x31, 0x32, 0xce, 0xa9, 0xff),
      fc.integer({ min: 0, max: 255 }),
    );
    const options = fc.record({
      maxFrame: fc.integer({ min: 1, max: 12 }),
      encoding: fc.constantFrom('ascii', 'latin1', 'utf8'),
      dropFirstPartial: fc.boolean(),
      blocks: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(byte, { maxLength: 80 }),
        fc.array(fc.integer({ min: 0, max: 80 }), { maxLength: 10 }),
        options,
        (bytes, cuts, chosen) => {
          const whole = createFramer(chosen).push(Uint8Array.from(bytes));
          const chunked = createFramer(chosen);
          const edges = [0, ...cuts.sort((a, b) => a - b), bytes.length];
          const pieces = edges
            .slice(1)
            .flatMap((end, i) => chunked.push(Uint8Array.from(bytes.slice(edges[i], end))));
          expect(pieces).toEqual(whole);
          const single = createFramer(chosen);
          expect(bytes.flatMap((one) => single.push(Uint8Array.of(one)))).toEqual(whole);
        },
      ),
      { seed: 20260131, numRuns: 2000 },
    );
  });

  it('should give back whatever lines were sent, with any line ends', () => {
    const line = fc.stringMatching(/^[\x20-\x7e]{1,16}$/);
    const end = fc.constantFrom('\r', '\n', '\r\n', '\n\r');
    fc.assert(
      fc.property(fc.array(fc.tuple(line, end), { maxLength: 20 }), (lines) => {
        const sent = lines.map(([text, ending]) => text + ending).join('');
        expect(texts(sent)).toEqual(lines.map(([text]) => text));
      }),
      { seed: 20260131 },
    );
  });
});
