// A walk written down as what the probe does, step by step, fed to the walk engine as it is told. The meter reads at
// even times; scatter, where asked for, comes from a seed, so that a story always goes the same way.
import type { EventOf, EventType, WalkEvent } from '../../src/core/events.js';
import type { Act, ActName, Input, LinkChange } from '../../src/core/inputs.js';
import type { Profile, ProfileLine } from '../../src/core/profile/profile-format.js';
import type { Reading, ReadingContext } from '../../src/core/reading.js';
import type { Verdict } from '../../src/core/verdict.js';
import { beginWalk, decide } from '../../src/core/walk/decide.js';
import { assumedAccuracy, openLog } from '../../src/core/walk/open-session.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import type { WalkState } from '../../src/core/walk/state.js';

/** Each pin's line, in walking order; pins are named 1, 2, 3 and so on. */
export type StoryLines = readonly (readonly [name: string, line: ProfileLine])[];

export interface StoryOptions {
  readonly lines: StoryLines;
  readonly measure?: Profile['measure'];
  /** Readings a second. */
  readonly rate?: number;
  /** Standard deviation of one reading, as a fraction of it. */
  readonly noise?: number;
  readonly seed?: number;
  readonly groundCheck?: boolean;
  readonly pads?: EventOf<'session-opened'>['pads'];
  readonly pressTests?: 'asked' | 'each';
  /** A donor is touched before the story's board, pin by pin. */
  readonly donor?: 'beside';
}

export interface TouchOptions extends Partial<Omit<ReadingContext, 't'>> {
  /** The reading begins off by this fraction of the value and creeps to it with this time constant, seconds. */
  readonly creep?: { readonly share: number; readonly tauS: number };
}

export interface WalkStory {
  readonly events: readonly WalkEvent[];
  readonly inputs: readonly Input[];
  readonly state: WalkState;
  readonly opened: EventOf<'session-opened'>;
  /** Seconds from the story's beginning. */
  readonly t: number;
  /** Overload for so many seconds: the probe is in the air, or on an open line. */
  air(seconds: number): WalkStory;
  lift(seconds: number): WalkStory;
  /** Contact with something that reads `value`. */
  touch(value: number, seconds: number, options?: TouchOptions): WalkStory;
  /** Contact lost for so many seconds, then back on what was touched last, for a second. */
  slip(seconds: number): WalkStory;
  blank(seconds: number): WalkStory;
  act(act: ActName, more?: Omit<Act, 'act'>): WalkStory;
  link(change: LinkChange): WalkStory;
  of<K extends EventType>(type: K): readonly EventOf<K>[];
  /** The last verdict of every pin that has one, in order of their first. */
  verdicts(): Readonly<Record<string, Verdict>>;
  /** The pin the walk waits for; undefined when all are done. */
  here(): string | undefined;
}

export const storyProfile = (lines: StoryLines, measure: Profile['measure']): Profile => ({
  format: 'pinwalk-profile/1',
  id: 'story',
  title: 'Invented for tests',
  demo: true,
  provenance: { by: 'tests', date: '2026-01-31', how: 'invented' },
  measure,
  connector: { id: 'J1', pins: lines.map(([line], i) => ({ pin: `${i + 1}`, line })) },
  lines: Object.fromEntries(lines),
});

export const ohms = (nominal: number, more: Partial<ProfileLine> = {}): ProfileLine => ({
  kind: 'signal',
  expect: { resistance: { nominal, tolerance: 0.1 } },
  ...more,
});

export const tellStory = (options: StoryOptions): WalkStory => {
  const { rate = 10, noise = 0, seed = 1, groundCheck = false } = options;
  const measure = options.measure ?? { function: 'resistance', polarity: 'red-walks' };
  const content = storyProfile(options.lines, measure);
  const opened: EventOf<'session-opened'> = {
    ...openLog({ content, sha256: '' }, null, assumedAccuracy, 'story'),
    groundCheck,
    ...(options.pads === undefined ? {} : { pads: options.pads }),
    ...(options.donor === undefined ? {} : { donor: options.donor }),
    ...(options.pressTests === undefined ? {} : { pressTests: options.pressTests }),
  };
  const inputs: Input[] = [];
  const scatter = gaussianFrom(seed);
  let { state, events } = beginWalk(openWalk(opened));
  const told: WalkEvent[] = [...events];
  let t = 0;
  let taken = 0;
  let last = 0;

  const take = (input: Input): WalkStory => {
    inputs.push(input);
    ({ state, events } = decide(state, input));
    told.push(...events);
    return story;
  };
  const during = (seconds: number, shown: (at: number, sinceS: number) => Reading): WalkStory => {
    const from = t;
    t = Math.round((t + seconds) * 1e6) / 1e6;
    for (; taken / rate < t; taken += 1) {
      const at = taken / rate;
      take({ kind: 'reading', reading: shown(at, at - from) });
    }
    return story;
  };
  const air = (seconds: number): WalkStory =>
    during(seconds, (at) => ({ t: at, function: measure.function, overload: true }));

  const story: WalkStory = {
    get events() {
      return told;
    },
    inputs,
    get state() {
      return state;
    },
    opened,
    get t() {
      return t;
    },
    air,
    lift: air,
    touch: (value, seconds, { creep, ...context } = {}) => {
      last = value;
      const step = context.resolution ?? stepAt(value);
      return during(seconds, (at, sinceS) => {
        const off = creep === undefined ? 0 : creep.share * Math.exp(-sinceS / creep.tauS);
        const exact = value * (1 + off) * (1 + noise * scatter());
        return { t: at, function: measure.function, value: onStep(exact, step), ...context };
      });
    },
    slip: (seconds) => air(seconds).touch(last, 1),
    blank: (seconds) => during(seconds, (at) => ({ t: at, blank: true })),
    act: (act, more = {}) => take({ kind: 'act', t, act: { act, ...more } }),
    link: (change) => take({ kind: 'link', t, change }),
    of: <K extends EventType>(type: K) =>
      told.filter((event): event is EventOf<K> => event.type === type),
    verdicts: () =>
      Object.fromEntries(story.of('pin-judged').map(({ pin, verdict }) => [`pin ${pin}`, verdict])),
    here: () => state.plan.pins[state.cursor]?.pin,
  };
  return story;
};

/** One digit of a display of 6,000 counts whose lowest range is 400 ohm or 1 volt. */
const stepAt = (value: number): number =>
  Math.abs(value) < 1 ? 0.001 : 10 ** Math.ceil(Math.log10(Math.max(Math.abs(value), 400) / 6000));

const onStep = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toFixed(6));

/** Normal deviates from a seed: a small congruential generator and the method of Box and Muller. */
const gaussianFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
};
