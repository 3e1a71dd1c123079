// Who speaks for or against a line beside its own reading.

export const witnesses = [
  'ground-good',
  'ground-bad',
  'shorted',
  /** Another pin of the same line reads clearly less: the joint of this one is in doubt. */
  'same-line-reads-less',
  'mate-alike',
  'mate-differs',
  'mate-conducts',
  'mate-also-overload',
  'group-alike',
  'group-apart',
  'group-conducts',
  'unused-overload',
  'unused-conducts',
] as const;
export type Witness = (typeof witnesses)[number];
