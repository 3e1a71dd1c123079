// What the context needs of a pin that was read, and nothing of how it was read. A record of the walk fits as it is.
import type { Verdict } from '../verdict.js';

export interface ReadPin {
  readonly verdict: Verdict;
  /** Ohm or volt; null where overload or nothing was read. */
  readonly value: number | null;
  readonly overload: boolean;
  readonly standardUncertainty: number | null;
  /** Half the width of the largest rectangle within that uncertainty; absent where none is known. */
  readonly halfWidth?: number;
  /** Full scale of the range it was read on, where that is known. */
  readonly range?: number;
  readonly resolution?: number;
}

export interface MeasuredPin extends ReadPin {
  readonly value: number;
}

/** A value that held still. What wobbled says nothing about another pin. */
export const isMeasured = (pin: ReadPin | undefined): pin is MeasuredPin =>
  pin !== undefined && pin.value !== null && pin.verdict !== 'wobble' && pin.verdict !== 'unread';

/** An answered open, or an overload where it belongs. */
export const isOverloaded = (pin: ReadPin | undefined): boolean =>
  pin?.overload === true && pin.verdict !== 'unread';
