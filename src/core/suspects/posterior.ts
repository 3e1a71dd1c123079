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
  /** Prior times likelihood of each own case with each shared one, the shared changing fastest. */
  readonly weights: Float64Array;
  /** What each shared case's weights are to be multiplied with, so that all slices together sum to 1. */
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

export type CaseVisitor = (
  own: FaultCase,
  shared: FaultCase,
  slice: Slice,
  probability: number,
) => void;

/** Visits all that may be wrong on the route, with its probability. */
export const visitCases = ({ cases, slices }: RoutePosterior, visit: CaseVisitor): void => {
  const { own, shared } = cases;
  for (const slice of slices) {
    let at = 0;
    for (const mine of own)
      for (let place = 0; place < shared.length; place += 1) {
        const probability = (slice.weights[at] as number) * (slice.scale[place] as number);
        at += 1;
        if (probability > leastCase) visit(mine, shared[place] as FaultCase, slice, probability);
      }
  }
};
