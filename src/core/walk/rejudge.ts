// Judges stored captures by another profile. What was seen stays as it was; only the verdicts are new.
import type { EventOf } from '../events.js';
import { planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import { judge } from './judge.js';
import type { WalkState } from './state.js';

export interface Rejudged {
  readonly judged: EventOf<'pin-judged'>;
  /** The verdict stored in the session. */
  readonly before: EventOf<'pin-judged'>['verdict'];
}

/** Every captured pin that the profile also knows, in the session's order. */
export const rejudge = (state: WalkState, profile: Profile): readonly Rejudged[] => {
  const plan = planWalk(profile, { function: state.plan.function, polarity: state.plan.polarity });
  return state.plan.pins.flatMap(({ pin, index }): readonly Rejudged[] => {
    const record = state.pins[index];
    const planned = plan.pins.find((candidate) => candidate.pin === pin);
    if (record === undefined || planned === undefined || record.touch === null) return [];
    const observed =
      record.value === null
        ? ({ overload: true } as const)
        : { value: record.value, standardUncertainty: record.standardUncertainty ?? 0 };
    const judgement = judge(planned, observed);
    // What would not hold still says nothing about any limit.
    const verdict = record.verdict === 'wobble' ? 'wobble' : judgement.verdict;
    const judged: EventOf<'pin-judged'> = {
      type: 'pin-judged',
      t: state.t,
      pin,
      line: planned.line,
      ...judgement,
      verdict,
      agreed: record.agreed,
    };
    return [{ judged, before: record.verdict }];
  });
};
