import { describe, expect, it } from 'vitest';
import type { Input } from '../../../src/core/inputs.js';
import { freePress } from '../../../src/core/press/free-press.js';
import { type PressScript, scriptedPress, setup } from './scripted-press.js';

const readingsOf = (changes: Partial<PressScript> = {}): Input[] =>
  scriptedPress({ cycles: 5, ...changes }).filter(({ kind }) => kind === 'reading');

/** The technician's own marks in place of the cues. */
const marked = (changes: Partial<PressScript> = {}): Input[] =>
  scriptedPress({ closing: false, lagS: 0.05, ...changes }).map((input): Input => {
    if (input.kind !== 'cue') return input;
    const act = input.cue === 'press' ? 'pressing' : 'released';
    return { kind: 'act', t: input.t, act: { act } };
  });

describe('freePress', () => {
  it('reports the returns of an open line, their dwell, and that they repeat', () => {
    const free = freePress(setup, readingsOf());
    expect(free).toMatchObject({ rests: 'none', repeats: true, marked: null });
    expect(free.excursions).toHaveLength(5);
    expect(free.excursions.map(({ value }) => value)).toEqual([388, 388, 388, 388, 388]);
    expect(free.medianDwellS).toBeCloseTo(2, 0);
  });

  it('reports the losses of a line that rests sound', () => {
    const free = freePress(setup, readingsOf({ rests: 388, pressed: 'overload' }));
    expect(free).toMatchObject({ rests: 'contact', repeats: true });
    expect(free.excursions.map(({ value }) => value)).toEqual([null, null, null, null, null]);
  });

  it('learns the level where the profile knows no normal', () => {
    const free = freePress({ ...setup, normal: null }, readingsOf({ pressed: 91 }));
    expect(free).toMatchObject({ rests: 'none', repeats: true });
    expect(free.excursions).toHaveLength(5);
  });

  it('does not call two returns, or returns to different values, a repetition', () => {
    expect(freePress(setup, readingsOf({ cycles: 2 })).repeats).toBe(false);
    const disturbances = [{ from: 2, to: 4.4, shows: 330 } as const];
    expect(freePress(setup, readingsOf({ disturbances })).repeats).toBe(false);
  });

  it('sees no excursion in bounces and single odd readings', () => {
    const disturbances = [{ from: 3, to: 3.15, shows: 388 } as const];
    const free = freePress(setup, readingsOf({ pressed: 'overload', rate: 10, disturbances }));
    expect(free).toMatchObject({ rests: 'none', excursions: [], medianDwellS: null });
  });

  it('holds marked presses against the times between: 1/70 for four that all answer (Fisher 1935)', () => {
    const { marked: held } = freePress(setup, marked());
    expect(held).toMatchObject({ presses: 4, awayPressed: 4, awayBetween: 0 });
    expect(held?.pValue).toBeCloseTo(1 / 70, 12);
  });

  it('holds marked presses of a line that does not answer for nothing', () => {
    const { marked: held } = freePress(setup, marked({ pressed: 'overload' }));
    expect(held).toMatchObject({ presses: 4, awayPressed: 0, awayBetween: 0, pValue: 1 });
  });

  it('has nothing to say of nothing', () => {
    expect(freePress(setup, [])).toEqual({
      rests: null,
      segments: [],
      excursions: [],
      medianDwellS: null,
      repeats: false,
      marked: null,
    });
  });
});
