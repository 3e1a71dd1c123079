// A session passed on without the customer's data, with what is less common in one: presses at will, places probed
// along a line, and commands given by reply pads.
import type { WalkEvent } from '../../src/core/events.js';
import { eventful, opened } from './session-events.js';

const trace: readonly WalkEvent[] = Array.from({ length: 60 }, (_, at): WalkEvent => {
  const t = 700 + at / 5;
  const pressed = at % 20 >= 10 && at % 20 < 16;
  const read = pressed ? { value: 388.4 } : ({ overload: true } as const);
  return { type: 'reading-taken', t, function: 'resistance', ...read };
});

const marks: readonly WalkEvent[] = [702, 706, 710].flatMap((t): WalkEvent[] => [
  { type: 'act-taken', t: t - 0.2, act: 'pressing' },
  { type: 'act-taken', t: t + 1.1, act: 'released' },
]);

const freePress: readonly WalkEvent[] = [
  { type: 'press-begun', t: 700, pin: '2', line: 'D0_P', places: ['FL1'], free: true },
  ...[...trace, ...marks].sort((a, b) => a.t - b.t),
  {
    ...{ type: 'press-traced', t: 712, line: 'D0_P', part: 'FL1', rests: 'none' },
    excursions: [702, 706, 710].map((from) => ({ from, to: from + 1, value: 388.4 })),
    ...{ medianDwell: 1, repeats: true },
    marked: { presses: 3, awayPressed: 3, awayBetween: 0, pValue: 0.05 },
  },
  { type: 'press-ended', t: 712, pin: '2', reason: 'done' },
];

const probed: readonly WalkEvent[] = [
  {
    ...{ type: 'place-judged', t: 720, line: 'D0_P', part: 'FL1', side: 'far' },
    ...{ value: 388.1, standardUncertainty: 1.3, readings: 6, function: 'resistance' },
    ...{ from: 719, to: 720, verdict: 'normal', confidence: 0.9999 },
    expected: { nominal: 388, low: 349.2, high: 426.8 },
  },
  {
    ...{ type: 'place-judged', t: 724, line: 'D0_P', part: null, side: 'chip' },
    ...{ overload: true, standardUncertainty: null, readings: 0, function: 'resistance' },
    ...{ from: 723, to: 724, verdict: 'open', confidence: 0.99, expected: null },
  },
];

export const passedOn: readonly WalkEvent[] = [
  { ...opened, link: 'serial:', redacted: { of: 'e8a6c792aa64f998'.repeat(4) } },
  ...eventful.slice(1, -2),
  ...freePress,
  ...probed,
  { type: 'act-taken', t: 730, act: 'next', pin: '8', by: 'pad' },
  { type: 'session-closed', t: 731, reason: 'finished' },
];
