// What is believed about a true value around its estimate: somewhere within a rectangle, blurred by a normal
// error. Either part may be zero.
import { type Contribution, contributed } from './contribution.js';

export interface Spread {
  /** Half the width of the rectangle, in the unit of the value. */
  readonly halfWidth: number;
  /** Standard deviation of the normal part, in the same unit. */
  readonly normal: number;
}

export const normalSpread = (standardUncertainty: number): Spread => ({
  halfWidth: 0,
  normal: standardUncertainty,
});

/** A standard uncertainty of which a rectangle of known half-width is a part; the rest counts as normal. */
export const spreadWith = (standardUncertainty: number, halfWidth: number): Spread => ({
  halfWidth,
  normal: Math.sqrt(Math.max(0, standardUncertainty ** 2 - halfWidth ** 2 / 3)),
});

/** The largest rectangle of a budget stays one; all other rows together count as normal. */
export function spreadOfBudget(budget: readonly Contribution[]): Spread {
  const rectangles = budget.filter((row) => row.distribution === 'rectangular');
  const largest = rectangles.reduce<Contribution | null>(
    (best, row) => (best && contributed(best) >= contributed(row) ? best : row),
    null,
  );
  return {
    halfWidth: largest ? Math.sqrt(3) * contributed(largest) : 0,
    normal: Math.hypot(...budget.filter((row) => row !== largest).map(contributed)),
  };
}
