// Compares the two lines of a pair. Alike is not healthy: both may be open, shorted or off together, and the
// finding says on what they agree. Refuses to compare what was not read, what wobbles, and two ranges.

import type { PlannedPin } from '../profile/plan.js';
import type { ExpectedBounds } from '../verdict.js';
import { alikeWithin, coverage } from './alike.js';
import { isMeasured, isOverloaded, type MeasuredPin, type ReadPin } from './read-pin.js';

export type MateComparison =
  | {
      readonly finding: 'alike';
      readonly both: 'value' | 'overload' | 'short';
      /** See `differs`; 0 where both read nothing or next to nothing. */
      readonly difference: number;
    }
  | {
      readonly finding: 'differs';
      /**
       * How much more this line reads than its mate, against what is expected of the two, as a fraction; null
       * where one of them reads nothing.
       */
      readonly difference: number | null;
    }
  | {
      readonly finding: 'not-comparable';
      readonly because: 'not-read' | 'wobbles' | 'different-ranges' | 'too-uncertain';
    };

type Side = readonly [planned: PlannedPin, read: ReadPin | undefined];

/**
 * Alike within 3 %, or within twice the standard uncertainty of the difference where that is more. The two
 * readings count as independent although one meter took both, which errs towards alike. A difference that is
 * uncertain by more than 6 % compares nothing.
 *
 * @example 388 Ω and 395 Ω, 392 Ω expected of the second: alike; 388 Ω and 350 Ω: differs, by 0.12
 */
export const compareMates = ([pin, read]: Side, [mate, mateRead]: Side): MateComparison => {
  const because = obstacle(read, mateRead);
  if (because !== null) return { finding: 'not-comparable', because };
  if (!isMeasured(read) || !isMeasured(mateRead)) {
    return isOverloaded(read) && isOverloaded(mateRead)
      ? { finding: 'alike', both: 'overload', difference: 0 }
      : { finding: 'differs', difference: null };
  }
  const shorted = [read.value <= pin.shortLimit, mateRead.value <= mate.shortLimit];
  if (shorted.every(Boolean)) return { finding: 'alike', both: 'short', difference: 0 };
  if (shorted.some(Boolean) || mateRead.value <= 0 || read.value <= 0) {
    return { finding: 'differs', difference: null };
  }
  const ratio = read.value / mateRead.value / expectedRatio(pin.expected, mate.expected);
  const doubt = coverage * Math.hypot(relativeUncertainty(read), relativeUncertainty(mateRead));
  if (doubt > 2 * alikeWithin) return { finding: 'not-comparable', because: 'too-uncertain' };
  const difference = ratio - 1;
  if (!Number.isFinite(difference)) return { finding: 'differs', difference: null };
  return Math.abs(Math.log(ratio)) <= Math.log1p(Math.max(alikeWithin, doubt))
    ? { finding: 'alike', both: 'value', difference }
    : { finding: 'differs', difference };
};

const obstacle = (
  a: ReadPin | undefined,
  b: ReadPin | undefined,
): 'not-read' | 'wobbles' | 'different-ranges' | null => {
  if (a?.verdict === 'wobble' || b?.verdict === 'wobble') return 'wobbles';
  const isRead = (pin: ReadPin | undefined): boolean => isMeasured(pin) || isOverloaded(pin);
  if (!isRead(a) || !isRead(b)) return 'not-read';
  const ranges = [a?.range, b?.range];
  return ranges[0] !== undefined && ranges[1] !== undefined && ranges[0] !== ranges[1]
    ? 'different-ranges'
    : null;
};

const expectedRatio = (a: ExpectedBounds, b: ExpectedBounds): number =>
  a === null || b === null || a === 'overload' || b === 'overload' ? 1 : a.nominal / b.nominal;

const relativeUncertainty = ({ value, standardUncertainty }: MeasuredPin): number =>
  (standardUncertainty ?? 0) / value;
