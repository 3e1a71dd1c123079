// What a trainee is asked at a moment of a recorded session, and what the session itself answers.

import type { PressFinding } from '../press/decide-press.js';
import type { ExpectedBounds, Verdict } from '../verdict.js';

interface Asked {
  /** How many of the session's events have happened when it is asked; the next one would give the answer away. */
  readonly at: number;
  readonly pin: string;
  readonly line: string;
  /** What can be answered, in the order it is offered. */
  readonly choices: readonly string[];
  /** Answers that are worth a whole point. */
  readonly best: readonly string[];
  /** Answers that are worth half a point. */
  readonly fair: readonly string[];
}

export interface VerdictQuestion extends Asked {
  readonly kind: 'verdict';
  readonly value: number | null;
  readonly overload: boolean;
  readonly standardUncertainty: number | null;
  readonly expected: ExpectedBounds;
}

export interface PressQuestion extends Asked {
  readonly kind: 'press';
  readonly verdict: Verdict;
}

/** A part or chip on a line's way from the pin inwards; a branch leaves the way. */
export interface WayStop {
  readonly name: string;
  readonly is: 'part' | 'branch' | 'chip';
}

export interface PartQuestion extends Asked {
  readonly kind: 'part';
  /** Empty where the profile knows none. */
  readonly way: readonly WayStop[];
  readonly along: readonly string[];
  /** What pressing the first place found in the session, and the place that answered; null where none did. */
  readonly answered: string | null;
}

export interface FindingQuestion extends Asked {
  readonly kind: 'finding';
  readonly part: string | null;
  readonly finding: PressFinding;
  readonly cycles: number;
  readonly pValue: number;
  /** Median values in the function's unit; null where most windows show none. */
  readonly pressedValue: number | null;
  readonly releasedValue: number | null;
}

export interface CauseQuestion extends Asked {
  readonly kind: 'cause';
  /** Probability of the likeliest place, 0 to 1. */
  readonly probability: number;
}

export type DrillQuestion =
  | VerdictQuestion
  | PressQuestion
  | PartQuestion
  | FindingQuestion
  | CauseQuestion;

/** Points for an answer, 0 to 1. */
export const pointsFor = ({ best, fair }: DrillQuestion, answer: string): 0 | 0.5 | 1 => {
  if (best.includes(answer)) return 1;
  return fair.includes(answer) ? 0.5 : 0;
};
