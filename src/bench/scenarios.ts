// Named situations on the bench: which faults the board has and how the meter is off. Faults are chosen by the
// role a line plays, so that every scenario works with any profile that has such lines.
import type { Profile } from '../core/profile/profile-format.js';
import type { Fault } from './faults.js';
import type { MeterError } from './meter.js';
import type { Trouble } from './trouble.js';
import type { BenchWork } from './world.js';

export interface Scenario {
  readonly about: string;
  /** @throws RangeError when the profile has no line for a role. */
  faults(profile: Profile): readonly Fault[];
  readonly error?: Partial<MeterError>;
  readonly troubles?: readonly Trouble[];
  /** Lines that the customer's story puts in doubt: they are press-tested though they read well. */
  doubts?(profile: Profile): readonly string[];
  readonly work?: BenchWork;
}

type Line = Profile['lines'][string];

/** The lines of a role in walking order, each once. */
const linesOf = (profile: Profile, is: (line: Line) => boolean): string[] => [
  ...new Set(
    profile.connector.pins
      .map(({ line }) => line)
      .filter((name) => {
        const line = profile.lines[name];
        return line !== undefined && line.expect?.resistance !== 'overload' && is(line);
      }),
  ),
];

const nth = (profile: Profile, role: string, names: readonly string[], place: number): string => {
  const name = names[place] ?? names.at(-1);
  if (name === undefined)
    throw new RangeError(`profile ${profile.id} has no ${role}; choose another scenario`);
  return name;
};

const paired = (profile: Profile, place: number): string =>
  nth(
    profile,
    'signal line with a mate',
    linesOf(profile, (line) => line.kind === 'signal' && line.mate !== undefined),
    place,
  );

/** A signal line without a mate, or any where all have one. */
const single = (profile: Profile, place: number): string => {
  const signals = linesOf(profile, (line) => line.kind === 'signal');
  const own = signals.filter((name) => profile.lines[name]?.mate === undefined);
  return nth(profile, 'signal line', own.length === 0 ? signals : own, place);
};

const supply = (profile: Profile, place: number): string =>
  nth(
    profile,
    'supply line',
    linesOf(profile, (line) => line.kind === 'supply'),
    place,
  );

/** The first series part on the line's way to the chip. */
const seriesPart = (profile: Profile, line: string): string | undefined => {
  for (const stop of profile.lines[line]?.chain ?? []) if ('part' in stop) return stop.part;
  return undefined;
};

/** Without a known part to press on, a loose joint is an open one. */
const looseAt = (profile: Profile, line: string): Fault => {
  const part = seriesPart(profile, line);
  return part === undefined ? { kind: 'open', line } : { kind: 'loose', line, part };
};

export const scenarios = {
  demo: {
    about: 'a loose two-line filter with one line open, and a leaky control line',
    faults: (profile) => [
      looseAt(profile, paired(profile, 2)),
      { kind: 'leaky', line: single(profile, 3), ohms: 1800 },
    ],
  },
  'demo-reworked': {
    about: 'a demo board after a good rework: its faults are cured',
    faults: () => [],
  },
  'demo-overheated': {
    about:
      'a demo board after too much heat: its faults are cured, and the mate of the bad line is open',
    faults: (profile) => [{ kind: 'open', line: paired(profile, 3) }],
  },
  'demo-warm': {
    about: 'a demo board after a good rework, still warm: every line reads low',
    faults: (profile) =>
      linesOf(profile, ({ kind }) => kind === 'signal').map((line) => ({
        kind: 'drifted',
        line,
        factor: 0.93,
      })),
  },
  healthy: { about: 'a good board', faults: () => [] },
  'loose-filter': {
    about: 'both lines of a pair open through one loose part',
    faults: (profile) => [
      looseAt(profile, paired(profile, 2)),
      looseAt(profile, paired(profile, 3)),
    ],
  },
  'shifted-leaky': {
    about: 'a meter that reads 6 % high, and one leaky line',
    faults: (profile) => [{ kind: 'leaky', line: paired(profile, 4), ohms: 420 }],
    error: { scale: 1.06, diodeOffsetV: 0.02 },
  },
  cracked: {
    about: 'a joint that reads well and opens when its part is pressed',
    faults: (profile) => {
      const line = single(profile, 2);
      const part = seriesPart(profile, line);
      if (part === undefined)
        throw new RangeError(`profile ${profile.id} knows no part along ${line}; give its chain`);
      return [{ kind: 'cracked', line, part }];
    },
  },
  short: {
    about: 'a supply line shorted to ground',
    faults: (profile) => [{ kind: 'short', line: supply(profile, 1), ohms: 0.4 }],
  },
  'torn-ground': {
    about: 'one ground pin with a torn joint',
    faults: (profile) => {
      const grounds = profile.connector.pins.filter(
        ({ line }) => profile.lines[line]?.kind === 'ground',
      );
      const torn = grounds[Math.floor(grounds.length / 2)];
      if (torn === undefined)
        throw new RangeError(`profile ${profile.id} has no ground; choose another scenario`);
      return [{ kind: 'open', line: torn.line, pin: torn.pin }];
    },
  },
  charged: {
    about: 'a supply line with charge left on it',
    faults: (profile) => [{ kind: 'charged', line: supply(profile, 1), volts: -0.2 }],
  },
  everything: {
    about: 'an open, a short, a leaky and a drifted line, and a loose part',
    faults: (profile) => [
      { kind: 'drifted', line: paired(profile, 1), factor: 1.5 },
      looseAt(profile, paired(profile, 2)),
      { kind: 'leaky', line: paired(profile, 5), ohms: 120 },
      { kind: 'open', line: single(profile, 2) },
      { kind: 'short', line: supply(profile, 2), ohms: 0.4 },
    ],
  },
  story: {
    about: 'a loose two-line filter, a joint that opens under pressure, and a true open',
    faults: (profile) => {
      const cracked = single(profile, 2);
      const part = seriesPart(profile, cracked);
      const open = single(profile, 5);
      const broken = seriesPart(profile, open);
      return [
        looseAt(profile, paired(profile, 2)),
        looseAt(profile, paired(profile, 3)),
        ...(part === undefined ? [] : [{ kind: 'cracked', line: cracked, part } as const]),
        { kind: 'open', line: open, ...(broken === undefined ? {} : { at: broken }) },
      ];
    },
    doubts: (profile) => [single(profile, 2)],
  },
  pads: {
    about: 'a scrap board of reply pads, each touched once in turn to be learned',
    faults: () => [],
    work: 'touch-pads',
  },
  unplugged: {
    about: 'a good board, and a meter lead that is pulled for three seconds',
    faults: () => [],
    troubles: [{ atS: 20, kind: 'drop', forS: 3 }],
  },
} as const satisfies Readonly<Record<string, Scenario>>;

export type ScenarioName = keyof typeof scenarios;

export const scenarioNames = Object.keys(scenarios) as ScenarioName[];

export const scenarioOf = (name: ScenarioName): Scenario => scenarios[name];
