// The check before the walk: which contacts were touched as ground and how it ended.
import type { Numbered } from '../events.js';

export interface GroundLog {
  take(event: Numbered): void;
  /** In the function's unit, in the order of the touches. */
  readonly values: readonly number[];
  readonly outcome: 'good' | 'skipped' | null;
}

export const createGroundLog = (): GroundLog => {
  const values: number[] = [];
  let outcome: GroundLog['outcome'] = null;
  return {
    values,
    get outcome() {
      return outcome;
    },
    take(event) {
      if (event.type === 'ground-touched') values.push(event.value);
      else if (event.type === 'ground-checked') outcome = event.outcome;
    },
  };
};
