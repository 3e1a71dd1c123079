import { describe, expect, it } from 'vitest';
import { selectCompared, selectLive, writeLive } from '../../../src/core/select/live.js';
import { steppedBench } from '../../ui/support/bench-session.js';

describe('live reading', () => {
  it.each([
    [389.6, 0.1, 'Ω', '389.6', 'Ω'],
    [389, 0.1, 'Ω', '389.0', 'Ω'],
    [4700, 1, 'Ω', '4.700', 'kΩ'],
    [47_000, 10, 'Ω', '47.00', 'kΩ'],
    [0, 0.1, 'Ω', '0.0', 'Ω'],
    [-0.04, 0.1, 'Ω', '0.0', 'Ω'],
    [0.512, 0.001, 'V', '0.512', 'V'],
    [-12.3, 0.1, 'Ω', '-12.3', 'Ω'],
  ])(
    'should write %d in steps of %d %s as the display does',
    (value, step, unit, digits, shown) => {
      expect(writeLive(value, step, unit)).toEqual({ digits, unit: shown });
    },
  );

  it('should name what is no value', () => {
    const { session } = steppedBench();
    const { state } = session;
    expect(selectLive(state)).toEqual({ kind: 'none' });
    expect(selectLive({ ...state, reading: { t: 1, fault: 'x' } })).toEqual({ kind: 'fault' });
    expect(selectLive({ ...state, reading: { t: 1, blank: true } })).toEqual({ kind: 'blank' });
    expect(
      selectLive({ ...state, reading: { t: 1, function: 'resistance', overload: true } }),
    ).toEqual({ kind: 'overload' });
  });

  it('should not compare the reading of a pin gone past with the next one', () => {
    const { session, until } = steppedBench();
    expect(until((state) => state.stage === 'walking')).toBe(true);
    const { state } = session;
    expect(state.contact.rest).not.toBeNull();
    expect(selectLive(state).kind).toBe('value');
    expect(selectCompared(state)).toBeNull();
  });
});
