// What readings tell of one another, and what may be doubted about a meter, in words. Names arrive cleaned.
import type { ReferenceOutcome } from '../context/check-reference.js';
import type { Shift } from '../context/estimate-shift.js';
import type { LeadZeroRefusal } from '../context/lead-zero.js';
import type { Reason } from '../context/reasons.js';
import type { ShiftClass } from '../context/shift-class.js';
import type { ReadyStep } from '../inputs.js';
import type { MeasureFunction } from '../reading.js';
import type { NextAction } from '../verdict.js';
import type { Certainty } from '../walk/certainty.js';

export interface ContextWords {
  /** How this meter reads beside what is expected; null: that is no longer told. */
  shift(lines: ShiftClass, shift: Shift | null): string;
  readonly reason: Readonly<Record<Reason, string>>;
  readonly advice: Readonly<Record<NextAction, string>>;
  readonly certainty: Readonly<Record<Certainty, string>>;
  /** A verdict that other readings changed. */
  anew(judged: string): string;
  /** What to do with the leads now; `known`: what the reference should read. */
  readyAsked(step: ReadyStep, known: string): string;
  readyLeft(step: ReadyStep): string;
  leadZeroed(ohms: string): string;
  /** Said once before the walk begins. */
  /** Said before a donor is walked beside the patient without expected values. */
  readonly donorUnknown: string;
  /** Said before one board is walked without expected values. */
  readonly orderAlone: string;
  readonly groundedLead: string;
  leadZeroRefused(refused: LeadZeroRefusal): string;
  reference(outcome: ReferenceOutcome, measure: MeasureFunction): string;
}
