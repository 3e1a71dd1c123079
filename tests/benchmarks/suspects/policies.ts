// Which probe comes next, by three rules, and what each costs on average; and the least any rule can cost, found by
// trying every tree of probes.

import type { Observation } from '../../../src/core/suspects/evidence.js';
import type { EffortOf, Probe } from '../../../src/core/suspects/probes.js';
import { rankProbes } from '../../../src/core/suspects/rank-probes.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { observedBy } from '../../support/observed-by.js';
import { type Hypothesis, isIsolated, type SharpWorld, splitBy, weightOf } from './sharp-world.js';
import type { SmallChain } from './small-chains.js';

export type CostOf = (probe: Probe) => number;

/** The next probe of the world by its index, or null to give up. */
export type Policy = (
  left: readonly Hypothesis[],
  evidence: readonly Observation[],
  done: ReadonlySet<number>,
) => number | null;

export interface Reached {
  /** Mean cost of the probes until the fault is isolated. */
  readonly cost: number;
  /** Share of the faults at which the rule gave up before. */
  readonly givenUp: number;
}

/** The mean over all faults that fit what the walk found, each by its probability. */
export const costOfPolicy = (
  { walked }: SmallChain,
  world: SharpWorld,
  policy: Policy,
  costOf: CostOf,
): Reached => {
  const go = (
    left: readonly Hypothesis[],
    evidence: readonly Observation[],
    done: ReadonlySet<number>,
  ): Reached => {
    if (isIsolated(left)) return { cost: 0, givenUp: 0 };
    const chosen = policy(left, evidence, done);
    const probe = chosen === null ? undefined : world.probes[chosen];
    if (chosen === null || probe === undefined) return { cost: 0, givenUp: 1 };
    const all = weightOf(left);
    let cost = costOf(probe);
    let givenUp = 0;
    for (const [found, part] of splitBy(left, chosen)) {
      const share = weightOf(part) / all;
      const seen = observedBy(probe, found);
      const rest = go(part, [...evidence, seen], new Set([...done, chosen]));
      cost += share * rest.cost;
      givenUp += share * rest.givenUp;
    }
    return { cost, givenUp };
  };
  return go(world.hypotheses, walked, new Set());
};

/** Along the line from the pin to the chip, then every press in the same order; line after line. */
export const inOrder =
  ({ probes }: SharpWorld): Policy =>
  (_left, _evidence, done) => {
    const next = probes.findIndex((_, index) => !done.has(index));
    return next < 0 ? null : next;
  };

/** The same order, without the probes whose outcome is already certain. */
export const inOrderSkipping =
  ({ probes }: SharpWorld): Policy =>
  (left) => {
    const next = probes.findIndex((_, index) => splitBy(left, index).size > 1);
    return next < 0 ? null : next;
  };

/** Without noise even a rare fault can be told, and the other rules tell it. */
const everyBit = 1e-6;

/** What the program proposes, however little it gains. */
export const asProposed =
  (
    { model }: SmallChain,
    { probes }: SharpWorld,
    effort: Readonly<Record<EffortOf, number>>,
  ): Policy =>
  (_left, evidence) => {
    const [proposed] = rankProbes(weighFaults(model, evidence), effort, everyBit);
    if (proposed === undefined) return null;
    const wanted = JSON.stringify(proposed.probe);
    const at = probes.findIndex((probe) => JSON.stringify(probe) === wanted);
    return at < 0 ? null : at;
  };

/** The least mean cost of any tree of probes, by exhaustive search over the sets of faults left. */
export const leastCost = ({ probes, hypotheses }: SharpWorld, costOf: CostOf): number => {
  const known = new Map<string, number>();
  const indexOf = new Map(hypotheses.map((hypothesis, index) => [hypothesis, index]));
  const least = (left: readonly Hypothesis[]): number => {
    if (isIsolated(left)) return 0;
    const key = left.map((hypothesis) => indexOf.get(hypothesis)).join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const all = weightOf(left);
    let best = Number.POSITIVE_INFINITY;
    probes.forEach((probe, index) => {
      const parts = splitBy(left, index);
      if (parts.size < 2) return;
      let cost = costOf(probe);
      for (const part of parts.values()) cost += (weightOf(part) / all) * least(part);
      best = Math.min(best, cost);
    });
    known.set(key, best);
    return best;
  };
  return least(hypotheses);
};
