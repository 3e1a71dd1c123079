// Whatever comes in, in whatever order: the state is the fold of its events, time goes one way, no pin is invented.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../../src/core/events.js';
import {
  type ActName,
  actNames,
  cueNames,
  type Input,
  inputTime,
  linkChanges,
} from '../../../src/core/inputs.js';
import { measureFunctions, readingFlags } from '../../../src/core/reading.js';
import { beginWalk, decide } from '../../../src/core/walk/decide.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { ohms, type StoryLines, tellStory } from '../../support/walk-story.js';

const lines: StoryLines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388, { mate: 'CLK' })],
  [
    'VDD',
    { kind: 'supply', charges: true, expect: { resistance: { nominal: 900, tolerance: 0.3 } } },
  ],
  ['CLK', ohms(742, { limits: { open: 50_000 } })],
];
const pinNames = new Set(lines.map((_, i) => `${i + 1}`));

/** What happens, with the seconds that pass before it; runs of equal readings make touches and air. */
type Happening = { readonly after: number; readonly times: number; readonly what: Untimed };
type Untimed = (t: number) => Input;

const value = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(0.2, 388.4, 391.2, 250.3, 741, 880, 426.8, 5130) },
  { weight: 1, arbitrary: fc.double({ min: -100, max: 1e7, noNaN: true }) },
);
const showing =
  (v: number): Untimed =>
  (t) => ({ kind: 'reading', reading: { t, function: 'resistance', value: v } });
const air: Untimed = (t) => ({
  kind: 'reading',
  reading: { t, function: 'resistance', overload: true },
});
const reading: fc.Arbitrary<Untimed> = fc.oneof(
  { weight: 8, arbitrary: value.map(showing) },
  { weight: 6, arbitrary: fc.constant(air) },
  {
    weight: 1,
    arbitrary: fc.constant(
      (t: number): Input => ({ kind: 'reading', reading: { t, blank: true } }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constant(
      (t: number): Input => ({ kind: 'reading', reading: { t, fault: '3?8' } }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc
      .record({
        function: fc.constantFrom(...measureFunctions),
        flags: fc.subarray([...readingFlags]),
        range: fc.constantFrom(600, 6000),
        resolution: fc.constantFrom(0.1, 1),
        value,
      })
      .map(
        (more) =>
          (t: number): Input => ({ kind: 'reading', reading: { t, ...more } }),
      ),
  },
);
/** Closing the session ends everything, so it comes seldom; what moves the walk on comes often. */
const acts: readonly ActName[] = [
  ...actNames,
  ...actNames.filter((act) => act !== 'quit'),
  ...([
    'open',
    'open',
    'next',
    'skip',
    'skip',
    'skip',
    'dismiss',
    'dismiss',
    'dismiss',
    'dismiss',
    'resume',
    'resume',
  ] as const),
];
const other: fc.Arbitrary<Untimed> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .tuple(fc.constantFrom(...acts), fc.constantFrom('1', '2', '4', '99', undefined))
      .map(
        ([act, pin]) =>
          (t: number): Input => ({
            kind: 'act',
            t,
            act: { act, ...(pin === undefined ? {} : { pin }) },
          }),
      ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(...linkChanges).map(
      (change) =>
        (t: number): Input => ({ kind: 'link', t, change }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...cueNames).map(
      (cue) =>
        (t: number): Input => ({ kind: 'cue', t, cue }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('blocked' as const, 'writable' as const).map(
      (change) =>
        (t: number): Input => ({ kind: 'file', t, change, detail: 'disk full' }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constant((t: number): Input => ({ kind: 'meter', t, says: 'error', text: 'E1' })),
  },
);
const happening: fc.Arbitrary<Happening> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      after: fc.constantFrom(0.05, 0.1, 0.33),
      times: fc.integer({ min: 1, max: 25 }),
      what: reading,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      after: fc.constantFrom(0, 0.01, 2),
      times: fc.constant(1),
      what: other,
    }),
  },
);
/** Off the board for a while, then on something for long enough to settle. */
const properTouch: fc.Arbitrary<Happening[]> = fc
  .tuple(fc.constantFrom(0.05, 0.1, 0.33), fc.constantFrom(0.2, 0.9, 4), value)
  .map(([after, offS, v]) => [
    { after, times: Math.round(offS / after), what: air },
    { after, times: Math.ceil(1.6 / after), what: showing(v) },
  ]);
const happenings = fc
  .array(
    fc.oneof(
      properTouch,
      happening.map((one) => [one]),
    ),
    { minLength: 6, maxLength: 30, size: 'max' },
  )
  .map((all) => all.flat());

const inputsOf = (all: readonly Happening[]): Input[] => {
  const inputs: Input[] = [];
  let t = 0;
  for (const { after, times, what } of all) {
    for (let i = 0; i < times; i += 1) {
      t += after;
      inputs.push(what(t));
    }
  }
  return inputs;
};

const walked = (
  groundCheck: boolean,
  inputs: readonly Input[],
): { first: WalkState; last: WalkState; events: WalkEvent[] } => {
  const first = openWalk(tellStory({ lines, groundCheck }).opened);
  let { state, events } = beginWalk(first);
  const all = [...events];
  for (const input of inputs) {
    ({ state, events } = decide(state, input));
    all.push(...events);
  }
  return { first, last: state, events: all };
};

const always = (check: (groundCheck: boolean, inputs: Input[]) => void, numRuns = 50): void => {
  fc.assert(
    fc.property(fc.boolean(), happenings, (groundCheck, all) => check(groundCheck, inputsOf(all))),
    { seed: 20_260_131, numRuns },
  );
};

describe('decide, on any inputs', () => {
  it('the stories tried reach most kinds of decision that the walk makes', () => {
    const seen = new Set<string>();
    always((groundCheck, inputs) => {
      for (const { type } of walked(groundCheck, inputs).events) seen.add(type);
    }, 150);
    expect([...seen]).toEqual(
      expect.arrayContaining([
        'ground-touched',
        'ground-missed',
        'pin-settled',
        'pin-judged',
        'question-asked',
        'question-answered',
        'walk-held',
        'walk-freed',
        'walk-paused',
        'walk-continued',
        'act-refused',
        'press-begun',
        'walk-finished',
      ]),
    );
  });

  it('the events it gives, folded from the beginning, are the state it came to', () => {
    always((groundCheck, inputs) => {
      const { first, last, events } = walked(groundCheck, inputs);
      expect(events.reduce(evolve, first)).toEqual(last);
    });
  });

  it('the same inputs give the same events twice', () => {
    always((groundCheck, inputs) => {
      expect(walked(groundCheck, inputs).events).toEqual(walked(groundCheck, inputs).events);
    });
  });

  it('time never falls, and no event lies ahead of its input', () => {
    always((groundCheck, inputs) => {
      const { events } = walked(groundCheck, inputs);
      const end = inputs.length === 0 ? 0 : inputTime(inputs.at(-1) as Input);
      const times = events.map(({ t }) => t);
      expect(times).toEqual(times.toSorted((a, b) => a - b));
      expect(times.at(-1) ?? 0).toBeLessThanOrEqual(end);
    });
  });

  it('every pin it names is one of the profile, and the walk stands at one of them or at the end', () => {
    always((groundCheck, inputs) => {
      const { last, events } = walked(groundCheck, inputs);
      const named = events.flatMap((event) =>
        event.type === 'pin-judged' || event.type === 'pin-reached' || event.type === 'pin-settled'
          ? [event.pin]
          : [],
      );
      expect(named.filter((pin) => !pinNames.has(pin))).toEqual([]);
      expect(last.cursor).toBeGreaterThanOrEqual(0);
      expect(last.cursor).toBeLessThanOrEqual(lines.length);
    });
  });

  it('every pin named is one that a touch or an act brought there: no reading, no verdict but unread', () => {
    always((groundCheck, inputs) => {
      const { events } = walked(groundCheck, inputs);
      const settled = new Set<string>();
      for (const event of events) {
        if (event.type === 'pin-settled') settled.add(event.pin);
        if (event.type === 'pin-judged' && event.verdict !== 'unread') {
          expect(settled).toContain(event.pin);
        }
      }
    });
  });

  it('every confidence is a probability and every captured number finite', () => {
    always((groundCheck, inputs) => {
      for (const event of walked(groundCheck, inputs).events) {
        if (event.type === 'pin-judged') {
          expect(event.confidence).toBeGreaterThanOrEqual(0);
          expect(event.confidence).toBeLessThanOrEqual(1);
        }
        if (event.type === 'touch-captured') {
          expect(Number.isFinite(event.value ?? 0)).toBe(true);
          expect(Number.isFinite(event.standardUncertainty ?? 0)).toBe(true);
        }
      }
    });
  });
});
