// A walk of five pins written down by hand, with round numbers, for checking scorer and plain rule: ground,
// two lines that read alike, an open line, a leaky line that is touched twice.
import type { Input } from '../../../src/core/inputs.js';
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';
import type { ScoredEvent } from './scored-event.js';
import type { Contact, GeneratedWalk, PinTruth } from './walk-truth.js';

const expect = { resistance: { nominal: 400, tolerance: 0.1 } };

const profile: Profile = profileFormat.parse({
  format: 'pinwalk-profile/1',
  id: 'by-hand',
  title: 'By hand',
  provenance: { by: 'tests', date: '2026-01-31', how: 'written by hand' },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: {
    id: 'J1',
    pins: ['GND', 'A_P', 'A_N', 'B', 'C'].map((line, index) => ({ pin: `${index + 1}`, line })),
  },
  lines: {
    GND: { kind: 'ground' },
    A_P: { kind: 'signal', mate: 'A_N', expect },
    A_N: { kind: 'signal', mate: 'A_P', expect },
    B: { kind: 'signal', expect },
    C: { kind: 'signal', expect },
  },
});

const truth = (
  pin: string,
  line: string,
  value: number | null,
  right: PinTruth['right'],
  ends: PinTruth['ends'],
): PinTruth => ({
  pin,
  line,
  kind: line === 'GND' ? 'ground' : 'signal',
  condition: value === null ? 'open' : 'healthy',
  value,
  right,
  ends,
});

const hold = (index: number, start: number, end: number, seen: number | null): Contact => ({
  index,
  touch: 'hold',
  start,
  end,
  settledAt: seen === null ? null : start + 0.5,
  seen,
  slips: [],
});

export const contacts: readonly Contact[] = [
  hold(0, 1, 4, 0.3),
  hold(1, 5, 8, 400),
  { ...hold(2, 9, 9.1, 402), touch: 'neighbour', settledAt: null },
  hold(2, 9.2, 12, 402),
  hold(3, 13, 18, null),
  hold(4, 19, 22, 200),
  hold(4, 23, 26, 200),
];

/** Ten readings a second that show exactly what is touched, and the answer to the open line. */
const inputs: readonly Input[] = Array.from({ length: 270 }, (_, k): readonly Input[] => {
  const t = Number((k * 0.1).toFixed(1));
  const touched = contacts.find(({ start, end }) => t > start && t <= end);
  const seen = touched?.seen ?? null;
  const reading: Input = {
    kind: 'reading',
    reading:
      seen === null
        ? { t, function: 'resistance', overload: true }
        : { t, function: 'resistance', value: seen },
  };
  return t === 17 ? [reading, { kind: 'act', t, act: { act: 'open' } }] : [reading];
}).flat();

export const walkByHand: GeneratedWalk = {
  name: 'by-hand',
  profile,
  told: null,
  meter: {
    rate: 10,
    counts: 6_000,
    fullScales: [600, 6_000, 60_000],
    overAt: null,
    means: 'display',
    aperture: 1,
    noise: 0.001,
    gain: 0,
    offsetCounts: 0,
    drift: { amplitude: 0, periodS: 10, phase: 0 },
    ranging: 'unseen',
    rangingS: 0,
    tells: 'nothing',
    burst: 1,
  },
  pins: [
    truth('1', 'GND', 0.3, ['normal'], 'one-touch'),
    truth('2', 'A_P', 400, ['normal'], 'one-touch'),
    truth('3', 'A_N', 402, ['normal'], 'one-touch'),
    truth('4', 'B', null, ['open'], 'open'),
    truth('5', 'C', 200, ['low'], 'two-touches'),
  ],
  contacts,
  inputs,
};

export const settled = (pin: string, t: number, value: number | null): ScoredEvent =>
  value === null
    ? { type: 'pin-settled', t, pin, overload: true }
    : { type: 'pin-settled', t, pin, value };

export const judged = (
  pin: string,
  t: number,
  verdict: PinTruth['right'][number],
): ScoredEvent => ({
  type: 'pin-judged',
  t,
  pin,
  verdict,
});

/** What a faultless program says of the walk, by pin. */
export const faultless: ReadonlyMap<string, readonly ScoredEvent[]> = new Map([
  ['1', [settled('1', 2, 0.3), judged('1', 2, 'normal')]],
  ['2', [settled('2', 6, 400), judged('2', 6, 'normal')]],
  ['3', [settled('3', 10.2, 402), judged('3', 10.2, 'normal')]],
  ['4', [settled('4', 17, null), judged('4', 17, 'open')]],
  [
    '5',
    [settled('5', 20, 200), judged('5', 20, 'low'), settled('5', 24, 200), judged('5', 24, 'low')],
  ],
]);

/** The faultless events with those of some pins put in their place. */
export const eventsWith = (
  changed: Readonly<Record<string, readonly ScoredEvent[]>>,
): ScoredEvent[] => [...faultless].flatMap(([pin, events]) => changed[pin] ?? events);
