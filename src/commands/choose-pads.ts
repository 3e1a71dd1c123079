// Which reply pads a walk listens to: those of a file that was named, those that lie beside the virtual board, or
// those that were learned last. Pads that this profile's lines read like are left out, and that is said.
import { learnPads } from '../core/pads/learn-pads.js';
import type { Pad } from '../core/pads/pad.js';
import type { Plan } from '../core/profile/plan.js';
import { english } from '../core/words/english.js';
import { padFilePath, padsAt, readPads } from '../store/pad-file.js';
import { configuration } from './configuration.js';
import { exitCodes, UserError } from './user-error.js';

export interface ChosenPads {
  readonly pads: readonly Pad[];
  /** In words, for the technician. */
  readonly notices: readonly string[];
}

/** Where learned pads are kept. */
export const usualPadFile = (): string => configuration().padsFile ?? padFilePath();

const words = english.pads;

const none: ChosenPads = { pads: [], notices: [] };

/**
 * @param asked the file named, false for none, or undefined.
 * @throws FileError for a file that cannot be used, UserError for pads of another function.
 */
export const choosePads = (
  asked: string | false | undefined,
  around: {
    readonly ready: readonly Pad[] | null;
    /** A real meter: pads that were learned once lie on its bench. */
    readonly isMeter: boolean;
    readonly plan: Plan;
  },
): ChosenPads => {
  const { ready, isMeter, plan } = around;
  if (asked === false) return none;
  if (asked !== undefined) {
    const file = readPads(asked);
    if (file.function !== plan.function) {
      throw new UserError(
        english.refusals.padsOfOtherFunction(asked, file.function, plan.function),
        exitCodes.usage,
      );
    }
    return fitting(file.pads, plan);
  }
  if (ready !== null) return fitting(ready, plan);
  const learned = isMeter ? padsAt(usualPadFile()) : null;
  if (learned === null) return none;
  if (learned.function === plan.function) return fitting(learned.pads, plan);
  return { pads: [], notices: [words.otherFunction(learned.function, plan.function)] };
};

const fitting = (pads: readonly Pad[], plan: Plan): ChosenPads => {
  const { pads: fit, problems } = learnPads(pads, plan);
  return {
    pads: fit,
    notices: problems.map(({ command, what }) => words.leftOut(command, what)),
  };
};
