// Readings, limits, confidence and counts as they are shown, wherever they are.
import { formatReading } from '../measure/format-reading.js';
import { siUnit } from '../reading.js';
import { type ExpectedBounds, type Verdict, verdicts } from '../verdict.js';
import { certaintyOf, percentOf } from '../walk/certainty.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';
import type { Words } from './words.js';

/** What a pin read, with the digits its uncertainty supports. */
export const shownValue = (state: WalkState, pin: string, words: Words): string => {
  const record = state.pins[indexOfPin(state, pin)];
  if (record === undefined) return '';
  if (record.overload) return words.overload;
  if (record.value === null) return '-';
  return formatReading(record.value, record.standardUncertainty, siUnit(state.plan.function));
};

export const shownExpected = (expected: ExpectedBounds, unit: string, words: Words): string => {
  if (expected === null) return words.expectedNothing;
  if (expected === 'overload') return words.expectedOverload;
  return words.expectedBetween(
    formatReading(expected.low, null, unit),
    formatReading(expected.high, null, unit),
  );
};

export const tallyOf = (
  tally: Partial<Record<(typeof verdicts)[number], number>>,
): readonly (readonly [(typeof verdicts)[number], number])[] =>
  verdicts.flatMap((verdict) => {
    const n = tally[verdict] ?? 0;
    return n > 0 ? [[verdict, n] as const] : [];
  });

/** Confidence in words and number. */
export const shownConfidence = (
  judged: { readonly verdict: Verdict; readonly confidence: number },
  words: Words,
): string => `${words.context.certainty[certaintyOf(judged)]} ${percentOf(judged.confidence)}`;

/** What the known part should read, as its maker states it. */
export const shownReference = ({ reference, plan }: WalkState): string =>
  reference === null
    ? ''
    : `${formatReading(reference.value, null, siUnit(plan.function))} ± ${100 * reference.tolerance} %`;
