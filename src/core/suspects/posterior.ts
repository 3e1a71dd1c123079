// What is known of the faults once all evidence is weighed. Each route keeps its cases with their weights, from
// which the probability of anything on that route is a sum.
import type { LeadCase } from './lead-cases.js';
import type { Lead } from './priors.js';
import type { FaultCase, RouteCases } from './route-cases.js';
import type { SuspectModel } from './suspect-model.js';

/** The part of a route's posterior under which the leads were in one state. */
export interface Slice {
  /** The lead that was off at an observation on this route, if any was. */
  readonly lead: Lead | null;
  /** The lead that is off now, if any is. */
  readonly now: Lead | null;
  /** Prior times likelihood of each case, and of nothing on the route being at fault. */
  readonly sound: number;
  readonly weights: Float64Array;
  /** By joint state of the shared suspects: what its weights are to be multiplied with, so that all slices sum to 1. */
  readonly scale: Float64Array;
}

export interface RoutePosterior {
  readonly cases: RouteCases;
  /** Something was observed on this route. */
  readonly isSeen: boolean;
  readonly slices: readonly Slice[];
}

export interface Posterior {
  readonly model: SuspectModel;
  readonly leads: readonly { readonly case: LeadCase; readonly probability: number }[];
  /** One a route, in the model's order. */
  readonly routes: readonly RoutePosterior[];
  /** Nothing is at fault, the leads included. */
  readonly none: number;
  /** Something is at fault that no chain names, alone or beside others. */
  readonly other: number;
}

/** Cases less likely than this are passed over: together they change nothing that is shown. */
const leastCase = 1e-15;

export type CaseVisitor = (fault: FaultCase, slice: Slice, probability: number) => void;

/** Visits all that may be wrong on the route, with its probability. */
export const visitCases = (
  { cases: { cases }, slices }: RoutePosterior,
  visit: CaseVisitor,
): void => {
  for (const slice of slices)
    cases.forEach((fault, at) => {
      const probability = (slice.weights[at] as number) * (slice.scale[fault.shared] as number);
      if (probability > leastCase) visit(fault, slice, probability);
    });
};

/** Probability that something is at fault on the route, or that a lead is off now. */
export const doubtOf = ({ slices }: RoutePosterior): number =>
  slices.reduce(
    (left, { sound, scale, now }) => (now === null ? left - sound * (scale[0] as number) : left),
    1,
  );
