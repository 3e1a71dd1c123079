// What a pin read and what a good board reads, as phrases: sensible digits, never more than the meter gives.

import { formatReading } from '../measure/format-reading.js';
import { formatReadingWithUncertainty } from '../measure/format-reading-with-uncertainty.js';
import type { ExpectedBounds } from '../verdict.js';
import { type Phrase, say, value } from '../words/report-phrase.js';
import type { SharedWords } from '../words/report-words.js';

interface Read {
  readonly value: number | null;
  readonly overload: boolean;
  readonly standardUncertainty: number | null;
}

/** With the digits the uncertainty supports; an overload by its word. */
export const writtenReading = (read: Read, unit: string, shared: SharedWords): Phrase =>
  written(read, shared, (v, u) => formatReading(v, u, unit));

/** With the standard uncertainty in parentheses. */
export const exactReading = (read: Read, unit: string, shared: SharedWords): Phrase =>
  written(read, shared, (v, u) => formatReadingWithUncertainty(v, u, unit));

const written = (
  { value: v, overload, standardUncertainty }: Read,
  shared: SharedWords,
  format: (value: number, uncertainty: number | null) => string,
): Phrase => {
  if (overload) return shared.overload;
  return v === null ? say`${value('-')}` : say`${value(format(v, standardUncertainty))}`;
};

export const goodBoard = (
  expected: Exclude<ExpectedBounds, null>,
  unit: string,
  shared: SharedWords,
): Phrase => {
  if (expected === 'overload') return shared.overload;
  const high = formatReading(expected.high, null, unit);
  if (expected.low <= 0) return shared.atMost(value(high));
  const low = formatReading(expected.low, null, unit);
  return shared.between(value(withoutSharedUnit(low, high)), value(high));
};

/** "347.4" before "424.6 Ω"; a prefix of its own stays. */
const withoutSharedUnit = (low: string, high: string): string => {
  const unit = high.slice(high.indexOf(' '));
  return low.endsWith(unit) ? low.slice(0, -unit.length) : low;
};
