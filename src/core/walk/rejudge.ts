// Judges stored captures by another profile. What was seen stays as it was; only the verdicts are new.
import { estimateShift } from '../context/estimate-shift.js';
import { judgeInContext } from '../context/judge-in-context.js';
import type { EventOf } from '../events.js';
import { planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import { judge } from './judge.js';
import { judgeHere, withReasons } from './judge-here.js';
import { unreadPin } from './open-walk.js';
import type { WalkState } from './state.js';
import { indexOfPin } from './whereabouts.js';

export interface Rejudged {
  readonly judged: EventOf<'pin-judged'>;
  /** The verdict stored in the session. */
  readonly before: EventOf<'pin-judged'>['verdict'];
}

/** Every captured pin that the profile also knows, in the session's order. */
export const rejudge = (state: WalkState, profile: Profile): readonly Rejudged[] => {
  const { t, accuracy } = state;
  const plan = planWalk(profile, { function: state.plan.function, polarity: state.plan.polarity });
  const pins = plan.pins.map(({ pin }) => state.pins[indexOfPin(state, pin)] ?? unreadPin);
  const shifts = estimateShift(pins, plan, state.recheck?.shifts);
  const board = { plan, accuracy, pins, shifts };
  const judgements = new Map(
    judgeInContext(pins, plan, shifts, judge).map((judged) => [judged.pin, judged]),
  );
  return state.plan.pins.flatMap(({ pin }): readonly Rejudged[] => {
    const planned = plan.pins.find((candidate) => candidate.pin === pin);
    const record = planned === undefined ? undefined : pins[planned.index];
    if (planned === undefined || record === undefined || record.touch === null) return [];
    const judged = judgements.get(pin);
    const found =
      judged === undefined
        ? judgeHere(board, planned, { ...record, verdict: 'unsure' })
        : withReasons(judged, planned, record, board);
    // What would not hold still says nothing about any limit.
    const wobbles = record.verdict === 'wobble' ? { verdict: 'wobble' as const } : {};
    const { line } = planned;
    return [
      {
        judged: { type: 'pin-judged', t, pin, line, ...found, ...wobbles, agreed: record.agreed },
        before: record.verdict,
      },
    ];
  });
};
