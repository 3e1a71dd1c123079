import { describe, expect, it } from 'vitest';
import { apartScores } from '../../../src/core/context/apart-scores.js';
import { robustScale } from '../../../src/core/context/robust-scale.js';
import { modifiedZScores, outlierScore } from '../../../src/core/numbers/modified-z-scores.js';
import { deviates } from './demo-board.js';

describe('robustScale', () => {
  it('should be what is expected where nothing is seen', () => {
    expect(robustScale([], 0.02)).toBe(0.02);
  });

  it('should weigh four expected deviations against what is seen', () => {
    // (4 · 1² + 2 · (1.4826 · 3)²) / 6
    expect(robustScale([3, -3], 1)).toBeCloseTo(Math.sqrt((4 + 2 * (1.4826 * 3) ** 2) / 6), 12);
  });

  it('should come to the standard deviation of many normal deviations, whatever was expected', () => {
    const next = deviates(11);
    const many = Array.from({ length: 4000 }, () => 0.5 * next());
    expect(robustScale(many, 3)).toBeCloseTo(0.5, 1);
  });

  it('should hardly move when a third of the deviations are wild', () => {
    const next = deviates(12);
    const sound = Array.from({ length: 60 }, next);
    const wild = [...sound, ...Array.from({ length: 30 }, () => 1e6)];
    expect(robustScale(wild, 1)).toBeLessThan(2.5 * robustScale(sound, 1));
  });

  it('should stay above zero when everything agrees', () => {
    expect(robustScale([0, 0, 0], 0.01)).toBeGreaterThan(0.006);
  });

  it('should refuse an expectation of nothing', () => {
    expect(() => robustScale([1], 0)).toThrow('above 0');
  });
});

describe('apartScores', () => {
  // NIST/SEMATECH e-Handbook 1.3.5.17.1, uranium isotopes after Tietjen and Moore: seen at second hand; the
  // scores are computed from the handbook's own formula.
  const isotopes = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

  it('should give the modified z-scores of the handbook to a group of eight', () => {
    const { method, scores, centre } = apartScores(isotopes, 1);
    expect(method).toBe('modified-z');
    expect(centre).toBeCloseTo(201.37, 10);
    const published = [-1.3965, -1.2473, -0.7999, -0.3728, 0.3728, 0.3932, 0.5491, 29.9627];
    scores.forEach((score, at) => {
      expect(score).toBeCloseTo(published[at] ?? Number.NaN, 4);
    });
    expect(scores.filter((score) => Math.abs(score) > outlierScore)).toHaveLength(1);
  });

  it('should define the scores where more than half of the values are equal', () => {
    // NIST/SEMATECH e-Handbook 1.3.5.17: the MAD is then 0 and must not be divided by.
    const { scores } = apartScores([5, 5, 5, 5, 5, 5.0001, 9], 1);
    expect(scores.every(Number.isFinite)).toBe(true);
    expect(scores[6]).toBeGreaterThan(outlierScore);
    expect(scores[0]).toBe(0);
  });

  it('should not set one of three apart because the other two happen to agree', () => {
    const three = [1, 1.0001, 1.012];
    // What the median absolute deviation of three makes of it: the smaller gap.
    expect((0.6745 * 0.0119) / 0.0001).toBeGreaterThan(outlierScore);
    const { method, scores } = apartScores(three, 0.01);
    expect(method).toBe('pooled-scale');
    expect(Math.max(...scores.map(Math.abs))).toBeLessThan(outlierScore);
  });

  it('should set one of three apart that is far off', () => {
    expect(apartScores([1, 1.01, 1.3], 0.01).scores[2]).toBeGreaterThan(outlierScore);
  });

  it('should raise a tenth of the false alarms that small groups raise by their own spread', () => {
    const next = deviates(21);
    const isAlarm = (scores: readonly number[]): boolean =>
      scores.some((score) => Math.abs(score) > outlierScore);
    let pooled = 0;
    let own = 0;
    for (let trial = 0; trial < 3000; trial += 1) {
      const others = Array.from({ length: 15 }, () => 0.01 * next());
      const group = Array.from({ length: 3 + (trial % 3) }, () => 0.01 * next());
      if (isAlarm(apartScores(group, robustScale(others, 0.01)).scores)) pooled += 1;
      if (isAlarm(modifiedZScores(group))) own += 1;
    }
    expect(own).toBeGreaterThan(300);
    expect(pooled).toBeLessThan(own / 10);
  });

  it('should set nobody apart in a pair', () => {
    expect(apartScores([1, 9], 0.01)).toEqual({ method: 'too-few', centre: 5, scores: [0, 0] });
  });

  it('should refuse an empty group and values that are not', () => {
    expect(() => apartScores([], 1)).toThrow('1 or more');
    expect(() => apartScores([1, 2, 3], 0)).toThrow('above 0');
    expect(() => apartScores([1, Number.NaN, 2], 1)).toThrow('not finite');
  });
});
