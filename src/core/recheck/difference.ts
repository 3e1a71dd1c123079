// Whether a reading has changed by more than both readings' uncertainties explain.

import { rectangularUncertainty } from '../measure/rectangular-uncertainty.js';
import type { Verdict } from '../verdict.js';
import type { Difference } from './recheck-events.js';

export interface Read {
  readonly verdict: Verdict;
  readonly value?: number | undefined;
  readonly overload?: true | undefined;
  readonly standardUncertainty: number | null;
}

/** Coverage factor for about 95 %. */
const coverage = 2;
/** A touch counts as settled when less than this share of its reading is still to come. */
const leftToSettle = 0.005;

/**
 * Normalised error |after - before| / sqrt(U1² + U2²) with expanded uncertainties U = 2 u, over 1 where the two
 * differ: ISO 13528 calls it E_n (from memory); the denominator is GUM 5.1.2, eq. 10, for a difference. Both
 * readings are taken as independent although one meter made them: its share cancels in truth, so that a change has
 * to be larger, never smaller, than it need be. What settling may have left out is a rectangle (GUM 4.3.7) in each;
 * `contact` is what touching a pin anew may change, in the function's unit.
 */
export const normalisedError = (
  before: { readonly value: number; readonly standardUncertainty: number | null },
  after: { readonly value: number; readonly standardUncertainty: number | null },
  contact: number,
): number => {
  const u = Math.hypot(
    before.standardUncertainty ?? 0,
    after.standardUncertainty ?? 0,
    contact * Math.SQRT2,
    rectangularUncertainty(leftToSettle * Math.abs(before.value)),
    rectangularUncertainty(leftToSettle * Math.abs(after.value)),
  );
  const off = Math.abs(after.value - before.value);
  return off === 0 ? 0 : off / (coverage * u);
};

export interface Compared {
  readonly difference: Difference;
  /** Normalised error; null where no two numbers can be held against each other. */
  readonly score: number | null;
}

const bad: ReadonlySet<Verdict> = new Set(['low', 'high', 'short', 'open', 'wobble']);
export const isBad = (verdict: Verdict): boolean => bad.has(verdict);

export const compareReadings = (before: Read, after: Read, contact: number): Compared => {
  const score = scoreOf(before, after, contact);
  if (after.verdict === 'unread' || before.verdict === 'unread') {
    return { difference: 'unknown', score };
  }
  if (before.verdict === 'normal' && isBad(after.verdict))
    return { difference: 'newly-bad', score };
  if (before.overload === true || after.overload === true) {
    return { difference: before.overload === after.overload ? 'unchanged' : 'changed', score };
  }
  if (score === null) return { difference: 'unknown', score };
  return { difference: score > 1 ? 'changed' : 'unchanged', score };
};

/** A number that needs no more digits than a person would read. */
const scoreOf = (before: Read, after: Read, contact: number): number | null => {
  if (before.value === undefined || after.value === undefined) return null;
  const score = normalisedError(
    { value: before.value, standardUncertainty: before.standardUncertainty },
    { value: after.value, standardUncertainty: after.standardUncertainty },
    contact,
  );
  return Math.min(score, 1e6);
};
