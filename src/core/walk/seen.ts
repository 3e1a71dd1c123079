// A capture as it is judged: what was read, and what that is worth.
import type { ReadPin } from '../context/read-pin.js';
import type { AccuracyStatement } from '../session-events.js';
import { statedHalfWidth } from './capture-uncertainty.js';

interface Captured {
  readonly value?: number | undefined;
  readonly overload?: true | undefined;
  readonly standardUncertainty: number | null;
  readonly range?: number | undefined;
  readonly resolution?: number | undefined;
}

export const seenIn = (
  { value, overload, standardUncertainty, range, resolution }: Captured,
  accuracy: AccuracyStatement,
): Omit<ReadPin, 'verdict'> => ({
  value: value ?? null,
  overload: overload ?? false,
  standardUncertainty,
  ...(range === undefined ? {} : { range }),
  ...(resolution === undefined ? {} : { resolution }),
  ...(value === undefined || resolution === undefined
    ? {}
    : { halfWidth: statedHalfWidth(accuracy, { value, range, resolution }) }),
});
