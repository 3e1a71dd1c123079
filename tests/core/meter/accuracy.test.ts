import { describe, expect, it } from 'vitest';
import { accuracyFor, rangesOf } from '../../../src/core/meter/accuracy.js';
import { shippedDriver } from '../../support/driver-files.js';

const driver = shippedDriver('stream-value-unit');

describe('rangesOf', () => {
  it('should go from the lowest full scale to the highest, whatever the order in the file', () => {
    const turned = { ...driver, accuracy: driver.accuracy.toReversed() };
    expect(rangesOf(turned, 'resistance').map((row) => row.fullScale)).toEqual([
      600, 6e3, 60e3, 600e3, 6e6, 60e6,
    ]);
  });
});

describe('accuracyFor', () => {
  const fullScale = (range?: number, value?: number): number =>
    accuracyFor(driver, 'resistance', range, value).fullScale;

  it('should take the range that is told, whatever the value', () => {
    expect(fullScale(6000, 12)).toBe(6000);
    expect(fullScale(6000.0001)).toBe(6000);
  });

  it('should take the next higher range where the told one has no row', () => {
    expect(fullScale(4000, 12)).toBe(6000);
  });

  it('should take the lowest range that holds the value where none is told', () => {
    expect(fullScale(undefined, 0)).toBe(600);
    expect(fullScale(undefined, 600)).toBe(600);
    expect(fullScale(undefined, -601)).toBe(6000);
  });

  it('should take the highest range where nothing is told, or nothing holds it', () => {
    expect(fullScale()).toBe(60e6);
    expect(fullScale(undefined, 1e12)).toBe(60e6);
    expect(fullScale(1e9)).toBe(60e6);
  });

  it('should invent nothing for a function without a row', () => {
    const ohmOnly = { ...driver, accuracy: rangesOf(driver, 'resistance').slice() };
    expect(() => accuracyFor(ohmOnly, 'diode')).toThrow(RangeError);
  });
});
