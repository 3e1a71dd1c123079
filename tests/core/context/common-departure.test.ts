import { describe, expect, it } from 'vitest';
import { commonDeparture, type LineDeparture } from '../../../src/core/context/common-departure.js';

const group = (name: string, ...departures: number[]): LineDeparture[] =>
  departures.map((departure) => ({ group: name, departure, tolerance: 0.1, pins: 1 }));

describe('commonDeparture', () => {
  it('should find what three groups have in common', () => {
    const lines = [
      ...group('a', 0.058, 0.059, 0.057, 0.058),
      ...group('b', 0.06, 0.056),
      ...group('c', 0.058, 0.058),
    ];
    const found = commonDeparture(lines, 3);
    expect(found?.departure).toBeCloseTo(0.058, 6);
    expect(found).toMatchObject({ pins: 8, groups: 3, isCommon: true });
  });

  it('should be halved, uncertainty and all, when every figure is', () => {
    const lines = [
      ...group('a', 0.05, 0.06),
      ...group('b', 0.07, 0.055),
      ...group('c', 0.06, 0.06),
    ];
    const halved = lines.map((line) => ({
      ...line,
      departure: line.departure / 2,
      tolerance: line.tolerance / 2,
    }));
    const whole = commonDeparture(lines, 3);
    const half = commonDeparture(halved, 3);
    expect(half?.departure).toBeCloseTo((whole?.departure ?? 0) / 2, 9);
    expect(half?.standardUncertainty).toBeCloseTo((whole?.standardUncertainty ?? 0) / 2, 9);
  });

  it('should know it better from more groups', () => {
    const of = (count: number): number =>
      commonDeparture(
        Array.from({ length: count }, (_, at) => group(`g${at}`, 0.058, 0.058)).flat(),
        2,
      )?.standardUncertainty ?? 0;
    expect(of(3)).toBeGreaterThan(of(6));
    expect(of(6)).toBeGreaterThan(of(12));
    expect(of(12)).toBeGreaterThan(0);
  });

  it.each([
    ['one group off among three', [0, 0, 0.09]],
    ['two groups off among three', [0, 0.06, 0.06]],
    ['two clusters', [0, 0, 0.09, 0.09]],
    ['nothing in common', [-0.08, -0.03, 0.02, 0.07]],
    ['less than a fifth of the tolerance', [0.015, 0.015, 0.015, 0.015, 0.015, 0.015, 0.015]],
  ])('should find nothing in %s', (_what, departures) => {
    const lines = departures.flatMap((at, n) => group(`g${n}`, at, at, at));
    expect(commonDeparture(lines, 2)?.isCommon).toBe(false);
  });

  it('should not let a group be trimmed into agreement', () => {
    const lines = [
      ...group('a', 0.06, 0.3, 0.31, 0.3),
      ...group('b', 0.06, -0.3, -0.31, -0.3),
      ...group('c', 0.06, 0.06, 0.06),
    ];
    expect(commonDeparture(lines, 2)?.isCommon).toBe(false);
  });

  it('should want the groups asked for, and five pins', () => {
    const two = [...group('a', 0.058, 0.058, 0.058), ...group('b', 0.058, 0.058, 0.058)];
    expect(commonDeparture(two, 3)?.isCommon).toBe(false);
    expect(commonDeparture(two, 2)).toMatchObject({ groups: 2, isCommon: true });
    const few = [...group('a', 0.058, 0.058), ...group('b', 0.058, 0.058)];
    expect(commonDeparture(few, 2)?.isCommon).toBe(false);
    expect(commonDeparture([], 2)).toBeNull();
  });
});
