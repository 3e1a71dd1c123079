// The kinds of lines that a meter may read with a difference of their own.
import type { PlannedPin } from '../profile/plan.js';

export const shiftClasses = ['signal', 'supply'] as const;
export type ShiftClass = (typeof shiftClasses)[number];

/** Null where no shift holds: of other kinds of lines, and of what this meter read itself, on a donor. */
export const shiftClassOf = ({
  kind,
  fromDonor,
}: Pick<PlannedPin, 'kind' | 'fromDonor'>): ShiftClass | null =>
  fromDonor === undefined ? (shiftClasses.find((known) => known === kind) ?? null) : null;
