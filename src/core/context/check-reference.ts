// Tells from a known resistor, or a known junction in diode test, whether the meter may judge at all. Refuses only
// what no meter within its statement could read of a part within its tolerance. Refusals are data: a reason and
// the figures behind it.

import { accuracyHalfWidth } from '../measure/accuracy-half-width.js';
import { inferResolution, rowAt } from '../measure/accuracy-row.js';
import type { MeasureFunction } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';
import { coverage } from './alike.js';

export type ObservedReference =
  | {
      /** Ohm or volt, without the leads where they were zeroed. */
      readonly value: number;
      /** Of the scatter and of the lead zero; the meter's own accuracy comes from its statement. */
      readonly standardUncertainty: number;
      readonly range?: number;
      readonly resolution?: number;
    }
  | { readonly overload: true };

export interface KnownReference {
  /** Ohm or volt, above 0. */
  readonly value: number;
  /** As a fraction: what is printed on the resistor; for a junction what is known of its drop. */
  readonly tolerance: number;
}

interface Figures {
  /** Observed less known. */
  readonly error: number;
  /** The most that meter and part together are allowed, in the same unit. */
  readonly limit: number;
}

export type ReferenceOutcome =
  | ({ readonly ok: true } & Figures)
  | ({
      readonly ok: false;
      readonly because:
        | 'reads-high'
        | 'reads-low'
        /** So far off that another part, another unit or another function is likelier than a bad meter. */
        | 'another-part'
        /** What is allowed is so wide that agreeing would prove nothing. */
        | 'proves-nothing';
    } & Figures)
  /** `conducts-not`: nothing touches, or a junction is the wrong way round. */
  | { readonly ok: false; readonly because: 'conducts-not' | 'shorted' };

/** A check that allows more than this fraction tells nothing about lines that may differ by a tenth. */
const widestCheck = 0.15;
const anotherPart = 1.5;
const shortedBelow = 0.05;

/**
 * |observed - known| against (percent of reading + counts) + half a digit + tolerance + 2 u: the allowances
 * are added, not combined, because the question is what cannot be, and each of them may be used up.
 *
 * @throws RangeError when the known value or its tolerance is not above 0.
 * @example 100.9 Ω of 100 Ω ± 1 % on a meter of 0.5 % + 3 counts of 0.1 Ω: ok, 0.9 of 1.85 Ω allowed
 */
export const checkReference = (
  observed: ObservedReference,
  known: KnownReference,
  accuracy: AccuracyStatement,
  measure: MeasureFunction,
): ReferenceOutcome => {
  if (!(known.value > 0 && known.tolerance > 0)) {
    throw new RangeError('a reference has a value and a tolerance above 0');
  }
  if ('overload' in observed) return { ok: false, because: 'conducts-not' };
  const { value, range, standardUncertainty } = observed;
  if (value < shortedBelow * known.value) return { ok: false, because: 'shorted' };
  const resolution = observed.resolution ?? inferResolution(accuracy, measure, value, range);
  const limit =
    accuracyHalfWidth({ value, resolution, accuracy: rowAt(accuracy, value, range) }) +
    resolution / 2 +
    known.tolerance * known.value +
    coverage * standardUncertainty;
  const figures = { error: value - known.value, limit };
  const times = value / known.value;
  if (times > anotherPart || times < 1 / anotherPart) {
    return { ok: false, because: 'another-part', ...figures };
  }
  if (Math.abs(figures.error) > limit) {
    return { ok: false, because: figures.error > 0 ? 'reads-high' : 'reads-low', ...figures };
  }
  return limit > widestCheck * known.value
    ? { ok: false, because: 'proves-nothing', ...figures }
    : { ok: true, ...figures };
};
