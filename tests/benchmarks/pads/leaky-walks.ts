// Walks on the virtual bench over part of the demo connector, with leaky lines of any value, hands that fumble, and
// the walk listening to reply pads. Who never touches a pad must never be obeyed; who does must be understood.
import type { AnswerWay } from '../../../src/bench/bench-name.js';
import type { Fault } from '../../../src/bench/faults.js';
import { type Pace, usualPace } from '../../../src/bench/pace.js';
import { benchPads } from '../../../src/bench/pads.js';
import type { Driver } from '../../../src/core/meter/driver-format.js';
import type { PadCommand } from '../../../src/core/pads/pad.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { type LiveWalk, misnamed, walkOnBench } from '../../bench/support/live-walk.js';
import { type Random, seeded } from '../shared/random.js';

/** `random`: log-uniform from 10 Ω to 1 MΩ. `like-pads`: what is left of the line reads exactly like a pad. */
export type Leaks = 'random' | 'like-pads';

export interface LeakyWalks {
  readonly answers: AnswerWay;
  readonly leaks: Leaks;
  readonly rate: number;
  /** False for the same walks with nobody listening to pads. */
  readonly listens: boolean;
  readonly walks: number;
  readonly seed: string;
}

export interface PadTally {
  walks: number;
  leakyLines: number;
  /** Echoes and commands of pads that the technician never means. */
  falseEchoes: number;
  falseCommands: number;
  /** Commands that were meant: `open`, and `next` where a name is in doubt. */
  given: number;
  /** Captures told under another pin's name, and captures of a pad. */
  misnamed: number;
  padsRead: number;
  shadowed: number;
  unfinished: number;
}

const leakyLines = 3;
/** A hand that finds its pin badly, one time in three: it touches what is no pad the way a pad is touched. */
export const fumbling: Pace = { ...usualPace, fumbleChance: 0.33, fumbleS: [0.1, 1] };

/** Two grounds, pairs and single lines: a walk of half a minute. */
export const partOf = (profile: Profile): Profile => ({
  ...profile,
  connector: {
    ...profile.connector,
    pins: profile.connector.pins.filter((_, i) => i < 7 || (i >= 29 && i < 36)),
  },
});

export const leakyWalk = (
  whole: Profile,
  driver: Driver,
  { answers, leaks, listens, rate, seed }: Omit<LeakyWalks, 'walks'>,
  at: number,
): LiveWalk => {
  const profile = partOf(whole);
  const random = seeded(`${seed}/${answers}/${leaks}/${rate}/${at}`);
  const number = random.whole([1, 2 ** 31]);
  const faults = drawLeaks(profile, driver, leaks, number, random);
  return walkOnBench({
    profile,
    driver,
    bench: { answers, rate, seed: number, scenario: 'healthy', pace: 'usual' },
    setup: { faults, pace: fumbling },
    pads: listens,
    patienceS: 400,
  });
};

export const tallyLeaky = (whole: Profile, driver: Driver, asked: LeakyWalks): PadTally => {
  const tally: PadTally = {
    walks: 0,
    leakyLines: 0,
    falseEchoes: 0,
    falseCommands: 0,
    given: 0,
    misnamed: 0,
    padsRead: 0,
    shadowed: 0,
    unfinished: 0,
  };
  for (let at = 0; at < asked.walks; at += 1) {
    const walk = leakyWalk(whole, driver, asked, at);
    const meant: readonly PadCommand[] = asked.answers === 'pads' ? ['open', 'next'] : [];
    const misnames = misnamed(walk);
    tally.walks += 1;
    tally.leakyLines += leakyLines;
    for (const event of walk.events) {
      if (event.type === 'reply-asked' && !meant.includes(event.reply)) tally.falseEchoes += 1;
      if (event.type === 'reply-shadowed') tally.shadowed += 1;
      if (event.type !== 'reply-given') continue;
      if (meant.includes(event.reply)) tally.given += 1;
      else tally.falseCommands += 1;
    }
    tally.misnamed += misnames.filter((word) => !word.includes('was air')).length;
    tally.padsRead += misnames.filter((word) => word.includes('was air')).length;
    tally.unfinished += walk.finished ? 0 : 1;
  }
  return tally;
};

const drawLeaks = (
  profile: Profile,
  driver: Driver,
  leaks: Leaks,
  seed: number,
  random: Random,
): readonly Fault[] => {
  const lines = [...new Set(profile.connector.pins.map(({ line }) => line))].filter(
    (line) => profile.lines[line]?.kind === 'signal',
  );
  const pads = benchPads(profile, driver, profile.measure, seed);
  const bad = new Set<string>();
  while (bad.size < leakyLines) bad.add(lines[random.whole([0, lines.length - 1])] as string);
  return [...bad].flatMap((line): Fault[] => {
    const pad = pads[random.whole([0, pads.length - 1])];
    const ohms = leaks === 'random' ? random.logUniform([10, 1e6]) : (pad?.ohms ?? 1000);
    const leak: Fault = { kind: 'leaky', line, ohms };
    // Half of the random ones leak beside a sound line, the others instead of it.
    const alone = leaks === 'like-pads' || random.unit() < 0.5;
    return alone ? [{ kind: 'open', line }, leak] : [leak];
  });
};
