// The patient's part of a walk, where a donor is walked beside it: the pins as they would be without the donor.
import { walksDonor } from '../profile/donor.js';
import type { Plan } from '../profile/plan.js';

/** The same walk with the patient's pins alone, numbered anew; a walk without a donor stays as it is. */
export const patientAlone = <Record, Walk extends { plan: Plan; pins: readonly Record[] }>(
  walk: Walk,
): Walk => {
  const { plan, pins } = walk;
  if (!walksDonor(plan)) return walk;
  const own = plan.pins.filter(({ board }) => board !== 'donor');
  return {
    ...walk,
    plan: { ...plan, pins: own.map((pin, index) => ({ ...pin, index })) },
    pins: own.flatMap(({ index }) => pins[index] ?? []),
  };
};

/** Which pin of the connector a place in the walk is, counted from 1, and how many there are. */
export const pinCount = (
  plan: Plan,
  index: number,
): { readonly at: number; readonly total: number } => {
  const turns = walksDonor(plan) ? 2 : 1;
  const total = plan.pins.length / turns;
  return { at: Math.min(Math.floor(index / turns) + 1, total), total };
};
