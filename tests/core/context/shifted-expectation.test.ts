import { describe, expect, it } from 'vitest';
import { noShifts } from '../../../src/core/context/estimate-shift.js';
import { shiftedExpectation, shiftFor } from '../../../src/core/context/shifted-expectation.js';
import { demoPlan } from './demo-board.js';

const bounds = { nominal: 388, low: 349.2, high: 426.8 };
const scale = { scale: 1.06, standardUncertainty: 0.008, pins: 20, groups: 6 };
const offset = { offset: 0.02, standardUncertainty: 0.003, pins: 20, groups: 6 };

describe('shiftedExpectation', () => {
  it('should scale nominal and limits, and tell what the scale leaves uncertain', () => {
    const { expected, standardUncertainty } = shiftedExpectation(bounds, scale);
    expect(expected).toEqual({ nominal: 1.06 * 388, low: 1.06 * 349.2, high: 1.06 * 426.8 });
    expect(standardUncertainty).toBeCloseTo(0.008 * 388, 12);
  });

  it('should move nominal and limits by an offset', () => {
    const diode = { nominal: 0.47, low: 0.4324, high: 0.5076 };
    const { expected, standardUncertainty } = shiftedExpectation(diode, offset);
    expect(expected).toEqual({ nominal: 0.47 + 0.02, low: 0.4324 + 0.02, high: 0.5076 + 0.02 });
    expect(standardUncertainty).toBe(0.003);
  });

  it.each([
    ['no shift', bounds, null],
    ['an expected overload', 'overload', scale],
    ['nothing expected', null, scale],
  ] as const)('should leave %s as it is', (_what, expected, shift) => {
    expect(shiftedExpectation(expected, shift)).toEqual({ expected, standardUncertainty: 0 });
  });
});

describe('shiftFor', () => {
  it('should give each kind of line its own shift, and grounds and unused lines none', () => {
    const shifts = { ...noShifts, signal: scale };
    const of = (line: string) => {
      const pin = demoPlan.pins.find((planned) => planned.line === line);
      return pin === undefined ? undefined : shiftFor(pin, shifts);
    };
    expect(of('LANE0_P')).toBe(scale);
    expect(of('PANEL_3V3')).toBeNull();
    expect(of('GND')).toBeNull();
    expect(of('SPARE_1')).toBeNull();
  });
});
