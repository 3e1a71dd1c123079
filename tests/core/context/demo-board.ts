// Boards for the tests of context: the demo connector, or one made up on the spot, read by a meter that may be off.
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import type { Plan, PlannedPin } from '../../../src/core/profile/plan.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import type { Profile, ProfileLine } from '../../../src/core/profile/profile-format.js';
import type { MeasureFunction } from '../../../src/core/reading.js';
import { shippedProfile } from '../../bench/support/profile-files.js';

export const demoPlan = planWalk(shippedProfile('demo'));
export const demoDiodePlan = planWalk(shippedProfile('demo'), {
  function: 'diode',
  polarity: 'black-walks',
});

export const unread: ReadPin = {
  verdict: 'unread',
  value: null,
  overload: false,
  standardUncertainty: null,
};

export const readsValue = (value: number, standardUncertainty = 0.003 * value): ReadPin => ({
  verdict: 'unsure',
  value,
  overload: false,
  standardUncertainty,
});

export const readsNothing: ReadPin = {
  verdict: 'open',
  value: null,
  overload: true,
  standardUncertainty: null,
};

/** What a good board's pin reads: its nominal, ground, or overload where nothing is expected to conduct. */
export const goodReading = ({ kind, expected }: PlannedPin): ReadPin => {
  if (expected === 'overload' || expected === null) return readsNothing;
  return kind === 'ground' ? readsValue(0.2, 0.06) : readsValue(expected.nominal);
};

/** A board whose every pin is good, but for what `change` makes of it. */
export const boardOf = (
  plan: Plan,
  change: (pin: PlannedPin, good: ReadPin) => ReadPin = (_, good) => good,
): readonly ReadPin[] => plan.pins.map((pin) => change(pin, goodReading(pin)));

/** The same board read by a meter that shows so many times the value. */
export const scaledBy = (factor: number, pin: ReadPin): ReadPin =>
  pin.value === null ? pin : { ...pin, value: factor * pin.value };

export const offsetBy = (volts: number, pin: ReadPin): ReadPin =>
  pin.value === null ? pin : { ...pin, value: pin.value + volts };

/** A fixed sequence that looks random: the same deviates in every run. */
export const deviates = (seed: number): (() => number) => {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
};

export const profileOf = (
  lines: Readonly<Record<string, ProfileLine>>,
  order: readonly string[] = Object.keys(lines),
  measure: { function: MeasureFunction; polarity: 'red-walks' | 'black-walks' } = {
    function: 'resistance',
    polarity: 'red-walks',
  },
): Profile => ({
  format: 'pinwalk-profile/1',
  id: 'made-up',
  title: 'Made up for a test',
  provenance: { by: 'a test', date: '2026-01-31', how: 'Invented' },
  measure,
  connector: { id: 'J1', pins: order.map((line, at) => ({ pin: String(at + 1), line })) },
  lines: { ...lines },
});

export const planOf = (...given: Parameters<typeof profileOf>): Plan =>
  planWalk(profileOf(...given));

export const signal = (
  group: string | undefined,
  nominal: number | null,
  tolerance = 0.1,
  mate?: string,
): ProfileLine => ({
  kind: 'signal',
  ...(group === undefined ? {} : { group }),
  ...(mate === undefined ? {} : { mate }),
  ...(nominal === null ? {} : { expect: { resistance: { nominal, tolerance } } }),
});
