// The 44-byte header, field by field: RIFF WAVE with one PCM format chunk (Multimedia Programming Interface and
// Data Specifications 1.0, 1991; from memory).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wavOf, wavSeconds } from '../../../src/core/cues/wav.js';

describe('wavOf', () => {
  it('should write the header a player reads, little-endian, and the samples after it', () => {
    const bytes = Buffer.from(wavOf(Int16Array.of(1, -2, 32767, -32768), 22050));
    expect(bytes).toHaveLength(52);
    expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
    expect(bytes.readUInt32LE(4)).toBe(44);
    expect(bytes.toString('latin1', 8, 16)).toBe('WAVEfmt ');
    expect(bytes.readUInt32LE(16)).toBe(16);
    expect(bytes.readUInt16LE(20)).toBe(1);
    expect(bytes.readUInt16LE(22)).toBe(1);
    expect(bytes.readUInt32LE(24)).toBe(22050);
    expect(bytes.readUInt32LE(28)).toBe(44100);
    expect(bytes.readUInt16LE(32)).toBe(2);
    expect(bytes.readUInt16LE(34)).toBe(16);
    expect(bytes.toString('latin1', 36, 40)).toBe('data');
    expect(bytes.readUInt32LE(40)).toBe(8);
    expect([44, 46, 48, 50].map((at) => bytes.readInt16LE(at))).toEqual([1, -2, 32767, -32768]);
  });

  it.each([0, -22050, 22050.5, Number.NaN])('should refuse a sample rate of %d', (rate) => {
    expect(() => wavOf(new Int16Array(1), rate)).toThrow(RangeError);
  });
});

describe('wavSeconds', () => {
  it('should tell how long a file sounds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom(8000, 22050, 48000),
        (n, rate) => {
          expect(wavSeconds(wavOf(new Int16Array(n), rate))).toBeCloseTo(n / rate, 9);
        },
      ),
      { seed: 7 },
    );
  });

  it('should read a file that lies anywhere in a larger buffer', () => {
    const file = wavOf(new Int16Array(8000), 8000);
    const around = new Uint8Array(file.length + 3);
    around.set(file, 3);
    expect(wavSeconds(around.subarray(3))).toBe(1);
  });

  it.each([
    ['nothing', new Uint8Array(0)],
    ['a header without sound', wavOf(new Int16Array(0), 22050)],
    ['something else', new TextEncoder().encode(`${'error: no voice '.repeat(10)}`)],
    ['a header that plays no bytes a second', wavOf(new Int16Array(9), 22050).fill(0, 28, 32)],
  ])('should find no sound in %s', (_name, bytes) => {
    expect(wavSeconds(bytes)).toBe(0);
  });
});
