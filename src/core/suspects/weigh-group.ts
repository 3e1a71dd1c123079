// Sums one group of linked routes for one state of the leads: its total weight, and how likely each joint state
// of the shared suspects is on each of its routes.
import { eliminate, type Factor, factorOf } from './factor.js';
import type { RouteCases } from './route-cases.js';
import type { Weighed } from './route-weights.js';
import { priorOf, type SuspectModel } from './suspect-model.js';

export interface GroupMember {
  readonly cases: RouteCases;
  readonly weighed: Weighed;
}

export interface GroupWeight {
  /** Natural logarithm of the total, and of the total without unnamed faults and without any fault. */
  readonly logTotal: number;
  readonly logNamed: number;
  readonly logSound: number;
  /** Probability of each shared case, one table a member. */
  readonly shared: () => readonly Float64Array[];
}

export const weighGroup = (model: SuspectModel, members: readonly GroupMember[]): GroupWeight => {
  const unary = [...new Set(members.flatMap(({ cases }) => cases.scope))].map((suspect) =>
    priorTable(model, suspect),
  );
  const tables = (sumsOf: (weighed: Weighed) => Float64Array): Factor[] => [
    ...members.map(({ cases, weighed }) => factorOf(cases.scope, cases.states, sumsOf(weighed))),
    ...unary,
  ];
  const all = tables(({ sums }) => sums);
  const logSound = [
    ...members.map(({ weighed }) => weighed.sound),
    ...unary.map(({ values, logScale }) => (values[0] as number) * Math.exp(logScale)),
  ].reduce((sum, weight) => sum + Math.log(weight), 0);
  let shared: readonly Float64Array[] | null = null;
  return {
    logTotal: logSum(all),
    logNamed: logSum(tables(({ namedSums }) => namedSums)),
    logSound,
    shared: () => {
      shared ??= members.map(({ cases }) => normalised(eliminate(all, cases.scope).values));
      return shared;
    },
  };
};

const priorTable = (model: SuspectModel, suspect: number): Factor => {
  const modes = model.suspects[suspect]?.modes ?? [];
  const values = [1 - priorOf(model, suspect), ...modes.map(({ prior }) => prior)];
  return factorOf([suspect], [values.length], Float64Array.from(values));
};

const logSum = (factors: readonly Factor[]): number => {
  const { values, logScale } = eliminate(factors, []);
  return Math.log(values[0] as number) + logScale;
};

const normalised = (values: Float64Array): Float64Array => {
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => value / sum);
};
