// The world of the probe benchmark: exactly one place is at fault and no probe misleads, so every probe has one
// certain outcome for each fault, and the faults left are those that fit all outcomes so far.
import { outlookOf } from '../../../src/core/suspects/outlook.js';
import { lookOf, type Probe, probesOn } from '../../../src/core/suspects/probes.js';
import type { SeatedFault } from '../../../src/core/suspects/sight.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import type { Look } from '../../../src/core/suspects/views.js';
import type { SmallChain } from './small-chains.js';

/** One place at fault in one mode. */
export interface Hypothesis {
  readonly place: number;
  readonly weight: number;
  /** What each probe of the world finds, by its index. */
  readonly finds: readonly string[];
}

export interface SharpWorld {
  readonly probes: readonly Probe[];
  readonly hypotheses: readonly Hypothesis[];
}

export const sharpWorld = ({ model, walked }: SmallChain): SharpWorld => {
  const probes = model.routes
    .flatMap((route) => probesOn(model, route))
    .filter(({ probe }) => probe !== 'other-ground' && probe !== 'retake');
  const hypotheses = model.suspects.flatMap(({ index, modes }) =>
    modes.flatMap(({ mode, prior }): Hypothesis[] => {
      const find = (look: Look): string => certainly(model, look, index, mode);
      const fits = walked.every((seen) => seen.kind === 'pin' && find(seen) === seen.verdict);
      if (!fits) return [];
      return [{ place: index, weight: prior, finds: probes.map((probe) => find(lookOf(probe))) }];
    }),
  );
  return { probes, hypotheses };
};

const certainly = (
  model: SuspectModel,
  look: Look,
  suspect: number,
  mode: SeatedFault['mode'],
): string => {
  const { outcomes, given } = outlookOf(model, look);
  const line =
    look.kind === 'pin'
      ? model.routes.find(({ pins }) => pins.includes(look.pin))?.line
      : look.line;
  const faults = (model.routes.find((route) => route.line === line)?.seats ?? [])
    .filter((seat) => seat.suspect === suspect)
    .map((seat) => ({ seat, mode }));
  const likely = given(faults, false);
  return outcomes[likely.indexOf(Math.max(...likely))] as string;
};

/** Nothing is left to tell: one place, or faults that no probe tells apart. */
export const isIsolated = (left: readonly Hypothesis[]): boolean => {
  const [first] = left;
  if (first === undefined) return true;
  return (
    left.every(({ place }) => place === first.place) ||
    left.every(({ finds }) => finds.every((found, probe) => found === first.finds[probe]))
  );
};

/** The hypotheses by what a probe would find. */
export const splitBy = (
  left: readonly Hypothesis[],
  probe: number,
): ReadonlyMap<string, readonly Hypothesis[]> => {
  const parts = new Map<string, Hypothesis[]>();
  for (const hypothesis of left) {
    const found = hypothesis.finds[probe] as string;
    parts.set(found, [...(parts.get(found) ?? []), hypothesis]);
  }
  return parts;
};

export const weightOf = (left: readonly Hypothesis[]): number =>
  left.reduce((sum, { weight }) => sum + weight, 0);
