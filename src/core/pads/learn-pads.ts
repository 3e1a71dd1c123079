// The real pads: each touched once, and kept only where no two, and no line of the walk, read alike. Refuses by
// name what does not fit, with what to do.
import type { Plan } from '../profile/plan.js';
import { padReach } from './match-pad.js';
import type { Pad, PadCommand } from './pad.js';

/** One pad touched, or null where the meter showed overload. */
export interface LearnedTouch {
  readonly command: PadCommand;
  readonly value: number | null;
  /** See `touchUncertainty`. */
  readonly standardUncertainty: number;
}

export interface LearnedPads {
  /** Those that fit. */
  readonly pads: readonly Pad[];
  readonly problems: readonly { readonly command: PadCommand; readonly what: string }[];
}

/** A pad must be farther from the next than both reach, by so much, that a poor contact does not bridge it. */
const keepApart = 2;

/** @param plan null where only the pads are held against each other, and against a short. */
export const learnPads = (touches: readonly LearnedTouch[], plan: Plan | null): LearnedPads => {
  const pads: Pad[] = [];
  const problems: { command: PadCommand; what: string }[] = [];
  for (const { command, value, standardUncertainty } of touches) {
    const what = problemOf({ command, value, standardUncertainty }, pads, plan);
    if (what === null && value !== null) pads.push({ command, value, standardUncertainty });
    else if (what !== null) problems.push({ command, what });
  }
  return { pads, problems };
};

const problemOf = (touch: LearnedTouch, pads: readonly Pad[], plan: Plan | null): string | null => {
  const { command, value, standardUncertainty: u } = touch;
  if (value === null) return 'nothing was read: check the joint of its ground end, touch it again';
  if (pads.some((pad) => pad.command === command)) return 'it was learned before: learn each once';
  const pad: Pad = { command, value, standardUncertainty: u };
  const reach = padReach(pad, u);
  const alike = pads.find(
    (other) => Math.abs(other.value - value) <= keepApart * padReach(other, u),
  );
  if (alike !== undefined) return `it reads like the pad "${alike.command}": use another value`;
  const pins = plan?.pins ?? [];
  const short = Math.min(...pins.map(({ shortLimit }) => shortLimit));
  if (value - reach <= (pins.length === 0 ? 0 : short))
    return 'it reads like a short: use a larger value';
  for (const { line, expected } of pins) {
    if (expected === null || expected === 'overload') continue;
    if (value + reach >= expected.low && value - reach <= expected.high)
      return `it reads like the line ${line}: use another value`;
  }
  return null;
};
