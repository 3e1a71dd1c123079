// The hand and the joint: answers cues with a lag, misses some, and the joint bounces, sticks and flutters.
import type { CueName } from '../../../src/core/inputs.js';
import type { Random } from '../shared/random.js';
import type { Change, Condition } from './bench-meter.js';
import type { PressKind } from './press-kinds.js';

export interface HandLaws {
  /** Total lag from cue to force, kept between 0.2 and 0.55 s. */
  readonly lagS: number;
  readonly missShare: number;
  readonly earlyShare: number;
}

export const drawHand = (random: Random): HandLaws => ({
  lagS: random.uniform([0.2, 0.55]),
  missShare: random.uniform([0, 0.06]),
  earlyShare: 0.005,
});

interface Joint {
  readonly rests: Condition;
  readonly pressed: Condition;
  /** The joint keeps its pressed state so long after release, at most. */
  readonly sticksS: number;
}

export const jointOf = (kind: PressKind, rests: Condition): Joint => {
  switch (kind) {
    case 'loose':
      return { rests: 'open', pressed: 'contact', sticksS: 0.1 };
    case 'sticky':
      return { rests: 'open', pressed: 'contact', sticksS: 1 };
    case 'cracked':
      return { rests: 'contact', pressed: 'open', sticksS: 0.2 };
    case 'bridged':
      return { rests: 'contact', pressed: 'short', sticksS: 0.2 };
    case 'steady-open':
      return { rests: 'open', pressed: 'open', sticksS: 0 };
    case 'sound':
      return { rests: 'contact', pressed: 'contact', sticksS: 0 };
    case 'slipping':
      return { rests, pressed: rests, sticksS: 0 };
  }
};

/** What the joint does from one cue until the next one, in order of time. */
export const answerCue = (
  joint: Joint,
  hand: HandLaws,
  random: Random,
  cue: { cue: CueName; t: number; nextT: number },
  values: { contact: number; short: number },
): Change[] => {
  const at = (t: number, condition: Condition): Change => ({
    t,
    condition,
    value: condition === 'short' ? values.short : values.contact,
  });
  const lagS = Math.min(0.55, Math.max(0.2, hand.lagS + 0.05 * random.normal()));
  const changeT = cue.t + lagS;
  if (joint.rests === joint.pressed) return [];
  if (cue.cue === 'release') {
    const t = changeT + joint.sticksS * random.unit();
    return [at(t, joint.rests)];
  }
  if (random.chance(hand.missShare)) return [];
  const changes = [at(changeT, joint.pressed)];
  const flutter = (t: number, lastsS: number): void => {
    changes.push(at(t, joint.rests), at(t + lastsS, joint.pressed));
  };
  if (random.chance(0.5))
    flutter(changeT + random.uniform([0.005, 0.03]), random.uniform([0.005, 0.03]));
  if (random.chance(0.2)) {
    const t = random.uniform([changeT + 0.1, Math.max(changeT + 0.2, cue.nextT - 0.2)]);
    flutter(t, random.uniform([0.02, 0.08]));
  }
  if (random.chance(hand.earlyShare))
    changes.push(at(cue.nextT - random.uniform([0.1, 0.5]), joint.rests));
  return changes.sort((a, b) => a.t - b.t);
};
