// Mean cost of each rule over the boards of a family, in probes or in effort.
import { defaultEffort, type EffortOf, effortFor } from '../../../src/core/suspects/probes.js';
import { seeded } from '../shared/random.js';
import {
  asProposed,
  costOfPolicy,
  inOrder,
  inOrderSkipping,
  leastCost,
  type Reached,
} from './policies.js';
import { sharpWorld } from './sharp-world.js';
import { drawSmallChain, type Family } from './small-chains.js';

export const counted: Readonly<Record<EffortOf, number>> = {
  retake: 1,
  'other-ground': 1,
  near: 1,
  far: 1,
  chip: 1,
  press: 1,
};
export const efforts = { probes: counted, effort: defaultEffort } as const;
export type Unit = keyof typeof efforts;

export interface RuleCosts {
  readonly family: Family;
  readonly boards: number;
  readonly inOrder: number;
  readonly inOrderSkipping: number;
  readonly proposed: number;
  readonly optimum: number;
  /** Share of the faults at which the program proposed nothing although a probe could still tell. */
  readonly givenUp: number;
}

export const compareRules = (
  family: Family,
  { boards, seed, unit }: { boards: number; seed: string; unit: Unit },
): RuleCosts => {
  const effort = efforts[unit];
  const costs = Array.from({ length: boards }, (_, i) => {
    const chain = drawSmallChain(family, seeded(`${seed}/${family}/${i}`));
    const world = sharpWorld(chain);
    const costOf = (probe: Parameters<typeof effortFor>[0]): number => effort[effortFor(probe)];
    const reach = (policy: Parameters<typeof costOfPolicy>[2]): Reached =>
      costOfPolicy(chain, world, policy, costOf);
    const proposed = reach(asProposed(chain, world, effort));
    return {
      inOrder: reach(inOrder(world)).cost,
      inOrderSkipping: reach(inOrderSkipping(world)).cost,
      proposed: proposed.cost,
      optimum: leastCost(world, costOf),
      givenUp: proposed.givenUp,
    };
  });
  const mean = (one: keyof (typeof costs)[number]): number =>
    costs.reduce((sum, cost) => sum + cost[one], 0) / boards;
  return {
    family,
    boards,
    inOrder: mean('inOrder'),
    inOrderSkipping: mean('inOrderSkipping'),
    proposed: mean('proposed'),
    optimum: mean('optimum'),
    givenUp: mean('givenUp'),
  };
};
