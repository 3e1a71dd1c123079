// How many pins have which verdict.
import type { Verdict } from '../verdict.js';
import { patientAlone } from './patient.js';
import type { WalkState } from './state.js';

/** The patient's alone, where a donor is walked beside it. */
export const tallyPins = (walk: Pick<WalkState, 'plan' | 'pins'>): Record<Verdict, number> => {
  const counts = { normal: 0, low: 0, high: 0, short: 0, open: 0, unsure: 0, wobble: 0, unread: 0 };
  for (const { verdict } of patientAlone(walk).pins) counts[verdict] += 1;
  return counts;
};
