// Thousands of walks of the demo board with reply pads: leaky lines of any value, commands given on purpose, and
// whatever the listener hears that was not meant.

import { type LearnedTouch, learnPads } from '../../../src/core/pads/learn-pads.js';
import { type Pad, padCommands } from '../../../src/core/pads/pad.js';
import { createPadListener, type PadHeard, padStep } from '../../../src/core/pads/pad-listener.js';
import { planPads } from '../../../src/core/pads/plan-pads.js';
import { touchUncertainty } from '../../../src/core/pads/touch-uncertainty.js';
import { type Plan, planWalk } from '../../../src/core/profile/plan.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import type { AccuracyStatement } from '../../../src/core/session-events.js';
import { type Random, seeded } from '../shared/random.js';
import { type HandAct, type PinReads, walkByHand } from './pad-hand.js';

export interface PadWalks {
  readonly walks: number;
  readonly leakyLines: number;
  readonly meant: number;
  /** Commands on purpose that were heard as such. */
  readonly heard: number;
  /** Commands that nobody gave, and commands heard as another one. */
  readonly falseCommands: number;
  /** Echoes of a command nobody gave, cancelled before it counted. */
  readonly falseEchoes: number;
  readonly shadowed: number;
}

export interface PadWalkOptions {
  readonly walks: number;
  readonly periodS: number;
  /** `random`: log-uniform from 10 Ω to 1 MΩ. `like-pads`: each exactly a pad's value. */
  readonly leaky: 'random' | 'like-pads';
  readonly seed: string;
}

const accuracy: AccuracyStatement = {
  from: 'assumed',
  fullScaleCounts: 6000,
  rows: [{ fullScale: null, resolution: null, percent: 0.5, counts: 3 }],
};
const leakyLines = 3;
const commandsAWalk = 3;

/** @throws Error when the profile takes no pads: there is nothing to try then. */
export const padsFor = (profile: Profile): readonly Pad[] => {
  const { polarity } = profile.measure;
  const plan = planPads(profile, { function: 'resistance', polarity }, accuracy, padCommands);
  if (!plan.planned) throw new Error(plan.reason);
  const touches = plan.pads.map(
    ({ command, ohms }): LearnedTouch => ({
      command,
      value: ohms,
      standardUncertainty: touchUncertainty(ohms, ohms / 6000, 'resistance'),
    }),
  );
  const { pads, problems } = learnPads(touches, planWalk(profile));
  if (problems.length > 0) throw new Error(problems.map(({ what }) => what).join('; '));
  return pads;
};

export const walkWithPads = (profile: Profile, options: PadWalkOptions): PadWalks => {
  const pads = padsFor(profile);
  const plan = planWalk(profile);
  const sums = { meant: 0, heard: 0, falseCommands: 0, falseEchoes: 0, shadowed: 0 };
  for (let i = 0; i < options.walks; i += 1) {
    const random = seeded(`${options.seed}/${options.leaky}/${options.periodS}/${i}`);
    const pins = drawPins(plan, pads, options.leaky, random.fork('pins'));
    const acts = walkByHand(
      pins,
      pads,
      { periodS: options.periodS, hunts: 0.25, pauses: 0.3, commands: commandsAWalk },
      random.fork('hand'),
    );
    const heard = listen(pads, acts, options.periodS);
    sums.meant += heard.meant;
    sums.heard += heard.heard;
    sums.falseCommands += heard.falseCommands;
    sums.falseEchoes += heard.falseEchoes;
    sums.shadowed += heard.shadowed;
  }
  return { walks: options.walks, leakyLines: leakyLines * options.walks, ...sums };
};

const drawPins = (
  plan: Plan,
  pads: readonly Pad[],
  leaky: PadWalkOptions['leaky'],
  random: Random,
): PinReads[] => {
  const bad = new Set<number>();
  while (bad.size < leakyLines) bad.add(random.whole([0, plan.pins.length - 1]));
  return plan.pins.flatMap(({ expected }, index): PinReads[] => {
    const creep = { amplitude: random.uniform([-0.7, 0.4]), tauS: 0.02 * 30 ** random.unit() };
    if (bad.has(index)) {
      const pad = pads[random.whole([0, pads.length - 1])] as Pad;
      const ohms = leaky === 'random' ? random.logUniform([10, 1e6]) : pad.value;
      return [{ ...creep, ...(leaky === 'random' ? {} : { amplitude: 0 }), ohms, isBad: true }];
    }
    if (expected === 'overload' || expected === null) return [];
    const ohms = Math.max(0.1, expected.nominal) * (1 + 0.02 * random.normal());
    return [{ ...creep, ohms, isBad: false }];
  });
};

/** Feeds the listener as a walk does, and holds what it hears against what was meant. */
const listen = (pads: readonly Pad[], acts: readonly HandAct[], periodS: number) => {
  let state = createPadListener(pads, periodS);
  const found = { meant: 0, heard: 0, falseCommands: 0, falseEchoes: 0, shadowed: 0 };
  let meant: string | null = null;
  const hear = (heard: readonly PadHeard[]): void => {
    for (const one of heard) {
      if (one.heard === 'given' && one.command === meant)
        [found.heard, meant] = [found.heard + 1, null];
      else if (one.heard === 'given') found.falseCommands += 1;
      else if (one.heard === 'cancelled' && one.command !== meant) found.falseEchoes += 1;
      else if (one.heard === 'shadowed') found.shadowed += 1;
    }
  };
  for (const act of acts) {
    if (act.act === 'meant') {
      found.meant += 1;
      meant = act.command;
      continue;
    }
    const input =
      act.act === 'touch'
        ? ({ kind: 'touch', touch: act.touch } as const)
        : act.act === 'air'
          ? ({ kind: 'air', t: act.t } as const)
          : ({ kind: 'line', from: act.from, value: act.value, u: act.u } as const);
    const step = padStep(state, input);
    state = step.state;
    hear(step.heard);
  }
  return found;
};
