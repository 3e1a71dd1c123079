import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goodBoard } from '../../../src/core/report/readings.js';
import { listed, writtenPercent, writtenSpan } from '../../../src/core/report/written.js';
import { englishShared } from '../../../src/core/words/english-report-shared.js';
import { name, plain } from '../../../src/core/words/report-phrase.js';

describe('writtenPercent', () => {
  it.each([
    [1, '> 99.9 %'],
    [0.9991, '> 99.9 %'],
    [0.999, '99.9 %'],
    [0.9899, '98.9 %'],
    [0.95, '95 %'],
    [0.29, '29 %'],
    [0, '0 %'],
  ])('should write %d as %s', (probability, says) => {
    expect(writtenPercent(probability).text).toBe(says);
  });

  it('should never claim more than the figure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
        const says = writtenPercent(probability).text;
        const claimed = Number(/[\d.]+/u.exec(says)?.[0]) / 100;
        expect(claimed).toBeLessThanOrEqual(probability + 1e-6);
        expect(says).not.toContain('100');
      }),
      { seed: 11 },
    );
  });
});

describe('writtenSpan', () => {
  it.each([
    [0, '0.0 s'],
    [3.25, '3.3 s'],
    [59.94, '59.9 s'],
    [60, '1 min 0 s'],
    [130.4, '2 min 10 s'],
    [3600, '1 h 0 min 0 s'],
    [7384, '2 h 3 min 4 s'],
  ])('should write %d s as %s', (seconds, says) => {
    expect(writtenSpan(seconds).text).toBe(says);
  });
});

describe('goodBoard', () => {
  it.each([
    [{ nominal: 388, low: 349.2, high: 426.8 }, '349.2 to 426.8 Ω'],
    [{ nominal: 1000, low: 900, high: 1100 }, '900 Ω to 1.1 kΩ'],
    [{ nominal: 0, low: 0, high: 5 }, 'at most 5 Ω'],
    ['overload', 'overload'],
  ] as const)('should write %j as %s', (expected, says) => {
    expect(plain(goodBoard(expected, 'Ω', englishShared))).toBe(says);
  });
});

describe('listed', () => {
  it('should stop after eight and say how many there are', () => {
    const names = Array.from({ length: 15 }, (_, at) => name(String(at)));
    expect(plain(listed(names.slice(0, 3), englishShared))).toBe('0, 1, 2');
    expect(plain(listed(names, englishShared))).toMatch(/, 7 and 7 more$/u);
  });
});
