import { describe, expect, it } from 'vitest';
import {
  lowerLimitAt,
  placeFromLevel,
  placeOf,
  upperLimitAt,
} from '../../../src/core/select/scale.js';

const band = { nominal: 388, low: 349.2, high: 426.8 };

describe('place on the scale', () => {
  it('should put the limits where every line has them', () => {
    expect(placeOf(349.2, band)?.at).toBeCloseTo(lowerLimitAt, 10);
    expect(placeOf(426.8, band)?.at).toBeCloseTo(upperLimitAt, 10);
    expect(placeOf(388, band)).toEqual({ at: expect.closeTo(0.5, 10), beyond: null });
  });

  it('should say on which side a reading has left the axis', () => {
    expect(placeOf(0.2, band)).toEqual({ at: 0, beyond: 'below' });
    expect(placeOf(9000, band)).toEqual({ at: 1, beyond: 'above' });
  });

  it('should place nothing where nothing bounds the reading', () => {
    expect(placeOf(388, null)).toBeNull();
    expect(placeOf(388, 'overload')).toBeNull();
    expect(placeOf(388, { nominal: 1, low: 1, high: 1 })).toBeNull();
  });

  it('should put a ground at the lower limit, not beyond it', () => {
    const place = placeOf(0.2, { nominal: 0, low: 0, high: 5 });
    expect(place?.beyond).toBeNull();
    expect(place?.at).toBeGreaterThan(lowerLimitAt);
    expect(place?.at).toBeLessThan(0.3);
  });

  it('should show creep towards a level where nothing is expected', () => {
    expect(placeFromLevel(95, 100)).toBeCloseTo(0.25, 10);
    expect(placeFromLevel(100, 100)).toBeCloseTo(0.5, 10);
    expect(placeFromLevel(500, 100)).toBe(1);
    expect(placeFromLevel(0, 0)).toBeCloseTo(0.5, 10);
  });
});
