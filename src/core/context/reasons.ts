// What had a part in a verdict beside the line's own reading and limits, in a word each.
import type { ContextJudgement } from './judge-in-context.js';
import { type Witness, witnesses } from './witness.js';

/**
 * `meter-shift`: the limits were moved to how this meter reads. `donor`: they are what the donor reads.
 * `boards-differ`: nothing but the donor tells what is right, so that the fault may be the donor's.
 */
export const reasons = ['meter-shift', 'donor', 'boards-differ', ...witnesses] as const;
export type Reason = (typeof reasons)[number];

export const reasonsOf = ({
  expected,
  shift,
  mate,
  neighbours,
}: Pick<ContextJudgement, 'expected' | 'shift' | 'mate' | 'neighbours'>): readonly Reason[] => [
  ...(shift !== null && typeof expected === 'object' && expected !== null
    ? (['meter-shift'] as const)
    : []),
  ...(neighbours === null ? mateReason(mate) : neighbours.because),
];

const mateReason = (mate: ContextJudgement['mate']): readonly Witness[] => {
  switch (mate?.finding) {
    case 'alike':
      if (mate.both === 'short') return [];
      return [mate.both === 'value' ? 'mate-alike' : 'mate-also-overload'];
    case 'differs':
      return ['mate-differs'];
    default:
      return [];
  }
};
