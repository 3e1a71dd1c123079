// One row of an uncertainty budget.

export interface Contribution {
  /** Where it comes from, in a word or two: "accuracy", "resolution", ... */
  readonly source: string;
  readonly distribution: 'normal' | 'rectangular' | 'triangular';
  /** Of the input quantity, in the input's own unit. */
  readonly standardUncertainty: number;
  /** How much the result moves per unit of the input: GUM 5.1.3. */
  readonly sensitivity: number;
  /** Infinity where the figure was not estimated from few readings. */
  readonly degreesOfFreedom: number;
}

/** What the row adds, in the unit of the result: |c| u. */
export const contributed = (row: Contribution): number =>
  Math.abs(row.sensitivity) * row.standardUncertainty;
