// Sessions written by hand for tests of the report: a small one in which everything a report shows happens once,
// told by its events. Numbered as in a file.
import type { EventOf, Numbered, WalkEvent } from '../../src/core/events.js';
import type { Profile } from '../../src/core/profile/profile-format.js';
import { looseFilter } from './press-events.js';

export const profile: Profile = {
  format: 'pinwalk-profile/1',
  id: 'panel',
  title: 'Panel connector of a made-up scale',
  provenance: {
    by: 'a test',
    date: '2026-01-15',
    how: 'Three boards, one meter',
    source: 'Bench book, page 12',
  },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: {
    id: 'J3',
    title: 'Panel connector, 8 pins',
    pinOne: 'Bevelled corner',
    viewed: 'plug',
    numbering: 'row-wise',
    endTabs: 'isolated',
    pins: [
      { pin: '1', line: 'GND', row: 1 },
      { pin: '2', line: 'D0_P', row: 1 },
      { pin: '3', line: 'D0_N', row: 1 },
      { pin: '4', line: 'RESET', row: 1 },
      { pin: '5', line: 'V3', row: 2 },
      { pin: '6', line: 'NC', row: 2 },
      { pin: '7', line: 'AUX', row: 2 },
      { pin: '8', line: 'KEY', row: 2 },
    ],
  },
  lines: {
    GND: { kind: 'ground', title: 'Ground' },
    D0_P: {
      kind: 'signal',
      title: 'Data, positive',
      mate: 'D0_N',
      expect: {
        resistance: { nominal: 388, tolerance: 0.1, from: { boards: 3, how: 'three boards' } },
      },
      chain: [
        { joint: 'J3 pin 2' },
        { shunt: { part: 'TV1' } },
        { joint: 'FL1 pad 1' },
        { part: 'FL1' },
        { chip: 'U2' },
      ],
    },
    D0_N: {
      kind: 'signal',
      title: 'Data, negative',
      mate: 'D0_P',
      expect: {
        resistance: { nominal: 390, tolerance: 0.1, from: { boards: 3, how: 'three boards' } },
      },
    },
    RESET: { kind: 'signal', expect: { resistance: { nominal: 4700, tolerance: 0.1 } } },
    V3: {
      kind: 'supply',
      title: 'Supply, 3.3 V',
      expect: { resistance: { nominal: 150, tolerance: 0.2 } },
    },
    NC: { kind: 'unused' },
    AUX: { kind: 'signal' },
    KEY: { kind: 'signal', expect: { resistance: { nominal: 12_000, tolerance: 0.1 } } },
  },
  parts: {
    FL1: { kind: 'filter', title: 'Two-line filter', lines: ['D0_P', 'D0_N'], where: 'Behind J3' },
    TV1: { kind: 'diode', lines: ['D0_P'] },
  },
};

export const opened: EventOf<'session-opened'> = {
  type: 'session-opened',
  t: 0,
  format: 'pinwalk-session/1',
  program: '0.1.0',
  wallTime: '2026-01-31T09:15:30.000Z',
  zone: 'Etc/UTC',
  link: 'serial:/dev/ttyUSB0?baud=9600',
  simulated: false,
  profile: { id: 'panel', sha256: '5a'.repeat(32), content: profile },
  driver: { id: 'stream-value-unit', sha256: 'c3'.repeat(32) },
  measure: profile.measure,
  accuracy: {
    from: 'driver',
    fullScaleCounts: 6000,
    rows: [
      { fullScale: 600, resolution: 0.1, percent: 0.5, counts: 3 },
      { fullScale: null, resolution: null, percent: 0.8, counts: 5 },
    ],
  },
  groundCheck: true,
};

interface Settled {
  readonly t: number;
  readonly touch: number;
  readonly pin: string;
  readonly value: number | null;
  readonly u?: number;
  readonly range?: number;
}

const lineOf = (pin: string): string =>
  profile.connector.pins.find((known) => known.pin === pin)?.line ?? '';

export const settled = ({ t, touch, pin, value, u, range }: Settled): EventOf<'pin-settled'> => ({
  type: 'pin-settled',
  t,
  touch,
  pin,
  line: lineOf(pin),
  ...(value === null ? { overload: true } : { value }),
  standardUncertainty: u ?? null,
  readings: value === null ? 0 : 6,
  function: 'resistance',
  ...(range === undefined ? {} : { range }),
  from: t - 1,
  to: t,
});

export const judged = (
  t: number,
  pin: string,
  verdict: EventOf<'pin-judged'>['verdict'],
  more: Partial<EventOf<'pin-judged'>> = {},
): EventOf<'pin-judged'> => ({
  type: 'pin-judged',
  t,
  pin,
  line: lineOf(pin),
  verdict,
  confidence: 0.9999,
  expected: null,
  agreed: true,
  ...more,
});

const bounds = (nominal: number, tolerance: number): EventOf<'pin-judged'>['expected'] => ({
  nominal,
  low: nominal * (1 - tolerance),
  high: nominal * (1 + tolerance),
});

const ground = { expected: { nominal: 0, low: 0, high: 5 } };

/** A walk with an open, a low and an undecided line, a pin left out, a lost link, a note and a second sitting. */
export const eventful: readonly WalkEvent[] = [
  opened,
  { type: 'link-changed', t: 0.1, change: 'opened', detail: '/dev/ttyUSB0, 9600 baud' },
  { type: 'meter-spoke', t: 0.2, says: 'identity', text: 'BENCH METER, 6000 counts' },
  { type: 'reading-taken', t: 0.5, function: 'resistance', value: 0.2 },
  { type: 'reading-taken', t: 1, function: 'resistance', overload: true },
  { type: 'reading-taken', t: 1.5, blank: true },
  { type: 'reading-taken', t: 2, fault: '0x3F garbled' },
  { type: 'reading-taken', t: 2.5, function: 'resistance', value: 0.2, flags: ['low-battery'] },
  { type: 'ground-touched', t: 3, value: 0.2, which: 1 },
  { type: 'ground-touched', t: 5, value: 0.3, which: 2 },
  { type: 'ground-checked', t: 5, outcome: 'good' },
  { type: 'pin-reached', t: 5, pin: '1', line: 'GND' },
  settled({ t: 7, touch: 0, pin: '1', value: 0.21, u: 0.1, range: 600 }),
  judged(7, '1', 'normal', ground),
  { type: 'pin-reached', t: 7, pin: '2', line: 'D0_P' },
  { type: 'question-asked', t: 10, question: 'open', pin: '2' },
  { type: 'question-answered', t: 14.5, question: 'open', pin: '2', by: 'ground-taps' },
  settled({ t: 14.5, touch: 1, pin: '2', value: null }),
  judged(14.5, '2', 'open', { confidence: 0.99, expected: bounds(388, 0.1) }),
  { type: 'pin-reached', t: 14.5, pin: '3', line: 'D0_N' },
  { type: 'link-changed', t: 16, change: 'lost', detail: 'the plug was pulled' },
  { type: 'walk-paused', t: 16, reason: 'link-lost' },
  { type: 'link-changed', t: 19.25, change: 'returned', detail: '/dev/ttyUSB0 is back' },
  { type: 'walk-continued', t: 19.25, pin: '3' },
  settled({ t: 21, touch: 2, pin: '3', value: 389.6, u: 1.3, range: 600 }),
  judged(21, '3', 'normal', { expected: bounds(390, 0.1) }),
  { type: 'pin-reached', t: 21, pin: '4', line: 'RESET' },
  settled({ t: 24, touch: 3, pin: '4', value: 1210, u: 9 }),
  judged(24, '4', 'low', { expected: bounds(4700, 0.1), agreed: false }),
  settled({ t: 27, touch: 4, pin: '4', value: 1213, u: 9 }),
  judged(27, '4', 'low', { expected: bounds(4700, 0.1) }),
  { type: 'act-taken', t: 28, act: 'note', pin: '5', text: 'White residue beside R12' },
  ...looseFilter(30),
  { type: 'session-closed', t: 60, reason: 'left' },
  {
    type: 'session-resumed',
    t: 630,
    program: '0.1.0',
    wallTime: '2026-01-31T09:26:00.000Z',
    zone: 'Etc/UTC',
    tornBytes: 0,
  },
  settled({ t: 633, touch: 5, pin: '5', value: 179.1, u: 1.2 }),
  judged(633, '5', 'unsure', {
    confidence: 0.77,
    expected: bounds(150, 0.2),
    advice: 'hold-longer',
  }),
  { type: 'act-taken', t: 636, act: 'next', pin: '6' },
  { type: 'question-asked', t: 639, question: 'open', pin: '6' },
  { type: 'act-taken', t: 640, act: 'open', pin: '6' },
  { type: 'question-answered', t: 640, question: 'open', pin: '6', by: 'act' },
  settled({ t: 640, touch: 6, pin: '6', value: null }),
  judged(640, '6', 'normal', { confidence: 0.99, expected: 'overload' }),
  settled({ t: 644, touch: 7, pin: '7', value: 2200, u: 14 }),
  judged(644, '7', 'normal', { confidence: 1 }),
  { type: 'act-refused', t: 645, act: 'open', reason: 'pin 8 shows a reading' },
  { type: 'walk-held', t: 646, reason: 'flag-hold', detail: 'hold is on' },
  { type: 'walk-freed', t: 648.5, reason: 'flag-hold' },
  { type: 'act-taken', t: 650, act: 'skip', pin: '8' },
  judged(650, '8', 'unread', { confidence: 1, expected: bounds(12_000, 0.1) }),
  {
    type: 'walk-finished',
    t: 650,
    tally: { normal: 4, low: 1, high: 0, short: 0, open: 1, unsure: 1, wobble: 0, unread: 1 },
  },
  { type: 'act-taken', t: 652, act: 'quit' },
  { type: 'session-closed', t: 652, reason: 'finished' },
];

export const numbered = (events: readonly WalkEvent[]): readonly Numbered[] =>
  events.map((event, seq) => ({ seq, ...event }));
