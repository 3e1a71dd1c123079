import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkReference } from '../../../src/core/context/check-reference.js';
import { assumedAccuracy, statedAccuracy } from '../../../src/core/walk/open-session.js';

const fine = { standardUncertainty: 0, resolution: 0.1 };
const hundred = { value: 100, tolerance: 0.01 };

const resistor = (value: number) =>
  checkReference({ value, ...fine }, hundred, assumedAccuracy, 'resistance');

describe('checkReference of a resistor', () => {
  it('should allow what meter and resistor together may do, and tell how much that is', () => {
    // 0.5 % of 100.9 + 3 steps of 0.1 + half a step + 1 % of 100.
    expect(resistor(100.9)).toEqual({
      ok: true,
      error: expect.closeTo(0.9, 12),
      limit: expect.closeTo(0.5045 + 0.3 + 0.05 + 1, 12),
    });
  });

  it('should reckon a meter statement as its maker does', () => {
    // 100.0 V, 0.8 % + 2 digits of 0.1 V: 1.0 V (an instrument maker's accuracy page, seen); here with half a
    // digit and a part of 0.1 %.
    const found = checkReference(
      { value: 100, ...fine },
      { value: 100, tolerance: 0.001 },
      statedAccuracy({ percent: 0.8, counts: 2, fullScaleCounts: 2000 }),
      'resistance',
    );
    expect(found).toMatchObject({ ok: true, limit: expect.closeTo(1 + 0.05 + 0.1, 12) });
  });

  it('should refuse a meter that reads 6 % too much or too little', () => {
    expect(resistor(106)).toMatchObject({ ok: false, because: 'reads-high' });
    expect(resistor(94)).toMatchObject({ ok: false, because: 'reads-low' });
  });

  it('should take a value far away for another part', () => {
    expect(resistor(1000)).toMatchObject({ ok: false, because: 'another-part' });
    expect(resistor(47)).toMatchObject({ ok: false, because: 'another-part' });
  });

  it('should tell nothing touched from probes that touch one another', () => {
    expect(checkReference({ overload: true }, hundred, assumedAccuracy, 'resistance')).toEqual({
      ok: false,
      because: 'conducts-not',
    });
    expect(resistor(0.3)).toEqual({ ok: false, because: 'shorted' });
  });

  it('should refuse a check that would prove nothing', () => {
    const found = checkReference(
      { value: 10, ...fine },
      { value: 10, tolerance: 0.2 },
      assumedAccuracy,
      'resistance',
    );
    expect(found).toMatchObject({ ok: false, because: 'proves-nothing' });
  });

  it('should infer the last digit where it is not told', () => {
    const told = resistor(100.9);
    const untold = checkReference(
      { value: 100.9, standardUncertainty: 0 },
      hundred,
      assumedAccuracy,
      'resistance',
    );
    expect(untold).toEqual(told);
  });

  it('should never refuse a meter within its statement on a part within its tolerance', () => {
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (ofMeter, ofPart) => {
        const part = 470 * (1 + 0.01 * ofPart);
        const shown = part + ofMeter * (0.005 * part + 0.3);
        const found = checkReference(
          { value: Math.round(shown * 10) / 10, ...fine },
          { value: 470, tolerance: 0.01 },
          assumedAccuracy,
          'resistance',
        );
        return found.ok;
      }),
      { seed: 421, numRuns: 300 },
    );
  });

  it('should refuse a reference of which nothing is known', () => {
    const blind = (value: number, tolerance: number) => () =>
      checkReference({ overload: true }, { value, tolerance }, assumedAccuracy, 'resistance');
    expect(blind(0, 0.01)).toThrow('above 0');
    expect(blind(100, 0)).toThrow('above 0');
  });
});

describe('checkReference of a junction', () => {
  const junction = (value: number) =>
    checkReference(
      { value, standardUncertainty: 0.0003, resolution: 0.001 },
      { value: 0.6, tolerance: 0.08 },
      assumedAccuracy,
      'diode',
    );

  // A silicon diode at 1 mA drops about 0.55 to 0.65 V: typical curves, from memory.
  it.each([0.55, 0.6, 0.65])('should accept %f V', (volts) => {
    expect(junction(volts).ok).toBe(true);
  });

  it('should refuse a meter that adds 80 mV, and tell a Schottky diode by its drop', () => {
    expect(junction(0.68)).toMatchObject({ ok: false, because: 'reads-high' });
    // BAT54 at 1 mA: 0.29 V typical, data sheets (seen).
    expect(junction(0.29)).toMatchObject({ ok: false, because: 'another-part' });
  });
});
