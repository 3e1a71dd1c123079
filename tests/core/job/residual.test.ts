import { describe, expect, it } from 'vitest';
import {
  isDischarged,
  readVoltmeter,
  residualLimitV,
  residualPlaces,
} from '../../../src/core/job/residual.js';
import type { Reading } from '../../../src/core/reading.js';
import { loadProfile } from '../../../src/store/load-definitions.js';

const volts = (...values: number[]): Reading[] =>
  values.map((value, t) => ({ t, function: 'dc-volts', value }));

describe('where residual volts are measured', () => {
  it('is once on each supply line, at its first pin', () => {
    expect(residualPlaces(loadProfile('demo').content)).toEqual([
      { line: 'LAMP_BOOST', pin: '22' },
      { line: 'PANEL_3V3', pin: '26' },
      { line: 'LOGIC_1V8', pin: '28' },
      { line: 'CORE_0V9', pin: '29' },
    ]);
  });

  it('is the supply input where the profile names no supply', () => {
    const { content } = loadProfile('demo');
    const lines = Object.fromEntries(
      Object.entries(content.lines).map(([name, line]) => [name, { ...line, kind: 'signal' }]),
    ) as typeof content.lines;
    expect(residualPlaces({ ...content, lines })).toEqual([{ line: null, pin: null }]);
  });
});

describe('what counts as discharged', () => {
  it.each([
    [0, true],
    [residualLimitV, true],
    [-residualLimitV, true],
    [0.051, false],
    [-0.3, false],
  ])('%f V: %s', (value, discharged) => {
    expect(isDischarged(value)).toBe(discharged);
  });
});

describe('reading the voltmeter', () => {
  it('wants three readings that hold still, and tells the one furthest from zero', () => {
    expect(readVoltmeter(volts(3, 0.004, 0.006, 0.005))).toEqual({
      shows: 'volts',
      volts: 0.006,
      steady: true,
    });
  });

  it('waits while a line is still falling, and while there are too few', () => {
    expect(readVoltmeter(volts(0.9, 0.5, 0.2))).toMatchObject({ steady: false });
    expect(readVoltmeter(volts(0, 0))).toMatchObject({ steady: false });
  });

  it('allows a high voltage its own share of flicker', () => {
    expect(readVoltmeter(volts(27.9, 28.1, 28))).toMatchObject({ volts: 28.1, steady: true });
  });

  it('never takes another function, a held display or nothing for volts', () => {
    const ohms: Reading = { t: 4, function: 'resistance', value: 0 };
    expect(readVoltmeter([...volts(0, 0, 0), ohms])).toEqual({ shows: 'other-function' });
    const held: Reading = { t: 4, function: 'dc-volts', value: 0, flags: ['hold'] };
    expect(readVoltmeter([...volts(0, 0, 0), held])).toEqual({ shows: 'held' });
    expect(readVoltmeter([...volts(0, 0, 0), { t: 4, fault: 'x' }])).toEqual({ shows: 'nothing' });
    expect(readVoltmeter([])).toEqual({ shows: 'nothing' });
  });

  it('does not mix in what was read in another function', () => {
    const ohms: Reading = { t: 0, function: 'resistance', value: 0 };
    expect(readVoltmeter([ohms, ...volts(0, 0)])).toMatchObject({ steady: false });
  });

  it('takes an overload for a charge', () => {
    const over: Reading = { t: 4, function: 'dc-volts', overload: true };
    expect(readVoltmeter([...volts(0, 0, 0), over])).toEqual({ shows: 'overload' });
  });
});
