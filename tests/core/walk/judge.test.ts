// Class probabilities against the normal distribution worked by hand, and against JCGM 106:2012. The figures of
// JCGM 106 are from memory as to where they stand in it, and recalculated.
import { describe, expect, it } from 'vitest';
import type { PlannedPin } from '../../../src/core/profile/plan.js';
import { isNormal, judge, leastConfidence } from '../../../src/core/walk/judge.js';

const pin = (more: Partial<PlannedPin>): PlannedPin => ({
  index: 0,
  pin: '1',
  line: 'LINE',
  kind: 'signal',
  group: undefined,
  mate: undefined,
  row: undefined,
  expected: { nominal: 100, low: 90, high: 110 },
  shortLimit: 5,
  openLimit: null,
  charges: false,
  ...more,
});
const reads = (value: number, standardUncertainty: number) => ({ value, standardUncertainty });

describe('judge', () => {
  it('JCGM 106 clause 7, motor oil (from memory, recalculated): 0.66 is too little to be sure', () => {
    const oil = pin({ expected: { nominal: 14.4, low: 12.5, high: 16.3 }, shortLimit: 0 });
    const judged = judge(oil, reads(13.6, 1.8));
    expect(judged.confidence).toBeCloseTo(0.66263, 5);
    expect(judged.verdict).toBe('unsure');
  });

  it('JCGM 106 clause 7, Zener voltage (from memory, recalculated): one limit, 0.92', () => {
    const zener = pin({ expected: { nominal: 2.7, low: 0, high: 5.47 }, shortLimit: 0 });
    expect(judge(zener, reads(5.4, 0.05)).confidence).toBeCloseTo(0.919243, 5);
  });

  it.each([
    [0.8, 0.8416],
    [0.9, 1.2816],
    [0.95, 1.6449],
    [0.99, 2.3263],
    [0.999, 3.0902],
  ])('JCGM 106 table 1 (from memory, recalculated): %d at %d standard uncertainties', (p, z) => {
    const oneSided = pin({ expected: { nominal: 0, low: 0, high: 110 } });
    expect(judge(oneSided, reads(110 - z * 2, 2)).confidence).toBeCloseTo(p, 4);
  });

  it('gives each class its share: 89 with an uncertainty of 1 is low by 0.8413, so unsure', () => {
    const judged = judge(pin({}), reads(89, 1));
    expect(judged.confidence).toBeCloseTo(0.841345, 5);
    expect(judged.verdict).toBe('unsure');
    expect(judge(pin({}), reads(87, 1))).toMatchObject({ verdict: 'low' });
    expect(judge(pin({}), reads(87, 1)).confidence).toBeCloseTo(0.99865, 5);
  });

  it.each([
    [100, 'normal'],
    [80, 'low'],
    [120, 'high'],
    [1, 'short'],
  ] as const)('%d is %s', (value, verdict) => {
    expect(judge(pin({}), reads(value, 0.5))).toMatchObject({ verdict });
    expect(isNormal(judge(pin({}), reads(value, 0.5)))).toBe(verdict === 'normal');
  });

  it('without any uncertainty the limits are steps, and belong to what is within', () => {
    expect(judge(pin({}), reads(110, 0))).toMatchObject({ verdict: 'normal', confidence: 1 });
    expect(judge(pin({}), reads(110.01, 0))).toMatchObject({ verdict: 'high', confidence: 1 });
    expect(judge(pin({}), reads(5, 0))).toMatchObject({ verdict: 'short', confidence: 1 });
  });

  it('names a class only from 95 % on', () => {
    for (let value = 80; value <= 120; value += 0.25) {
      const { verdict, confidence } = judge(pin({}), reads(value, 1));
      expect(verdict === 'unsure').toBe(confidence < leastConfidence);
    }
  });

  it('overload is open, or normal where it is expected', () => {
    expect(judge(pin({}), { overload: true })).toMatchObject({ verdict: 'open' });
    expect(judge(pin({ expected: 'overload' }), { overload: true })).toMatchObject({
      verdict: 'normal',
    });
    expect(judge(pin({ expected: 'overload' }), reads(50, 0.5))).toMatchObject({ verdict: 'low' });
  });

  it('at its own limit for open a number counts as open, by the probability of lying beyond', () => {
    const judged = judge(pin({ openLimit: 1000 }), reads(1004, 2));
    expect(judged.verdict).toBe('open');
    expect(judged.confidence).toBeCloseTo(0.97725, 5);
  });

  it('a line that may read less than the short limit is short only under its own band', () => {
    const supply = pin({ expected: { nominal: 3, low: 2, high: 4 }, shortLimit: 5 });
    expect(judge(supply, reads(3, 0.1))).toMatchObject({ verdict: 'normal' });
    expect(judge(supply, reads(1, 0.1))).toMatchObject({ verdict: 'short' });
  });
});
