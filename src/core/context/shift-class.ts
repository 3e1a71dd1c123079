// The kinds of lines that a meter may read with a difference of their own.

export const shiftClasses = ['signal', 'supply'] as const;
export type ShiftClass = (typeof shiftClasses)[number];
