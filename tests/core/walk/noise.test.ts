import { describe, expect, it } from 'vitest';
import { learnNoise, noiseAt, noiseWeight, unknownNoise } from '../../../src/core/walk/noise.js';

/** Captures of a bench whose readings scatter by this fraction. */
const learned = (relative: number, captures: number, level = 400, n = 12) => {
  let noise = unknownNoise;
  for (let i = 0; i < captures; i += 1) {
    const residualSquares = (relative * level) ** 2 * (n - 2);
    noise = learnNoise(noise, { residualSquares, level, n, resolution: 0.1 });
  }
  return noise;
};

describe('the noise of a bench', () => {
  it.each([0.0002, 0.003, 0.01])('is learned from the captures: %d of reading', (relative) => {
    expect(noiseAt(learned(relative, 200), 400, 0) / (relative * 400)).toBeCloseTo(1, 1);
  });

  it('is a fraction of the reading, and never less than rounding', () => {
    const noise = learned(0.003, 10);
    expect(noiseAt(noise, 800, 0)).toBeCloseTo(2 * noiseAt(noise, 400, 0), 10);
    expect(noiseAt(noise, 0, 1)).toBeCloseTo(1 / Math.sqrt(12), 10);
    expect(noiseAt(noise, -400, 0.1)).toBeCloseTo(noiseAt(noise, 400, 0.1), 10);
  });

  it('weighs more with experience, up to a bound', () => {
    const weights = [0, 1, 2, 50, 500].map((captures) => noiseWeight(learned(0.003, captures)));
    expect(weights[1]).toBeGreaterThan(weights[0] as number);
    expect([...weights].sort((a, b) => a - b)).toEqual(weights);
    expect(weights[4]).toBe(weights[3]);
  });

  it('learns nothing from two readings, nor from a level of a few display steps', () => {
    const two = { residualSquares: 9, level: 400, n: 2, resolution: 0.1 };
    expect(learnNoise(unknownNoise, two)).toEqual(unknownNoise);
    const ground = { residualSquares: 9, level: 0.4, n: 20, resolution: 0.1 };
    expect(learnNoise(unknownNoise, ground)).toEqual(unknownNoise);
  });
});
