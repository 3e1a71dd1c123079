// Judges stored captures by another profile. What was seen stays as it was; only the verdicts are new.
import { estimateShift } from '../context/estimate-shift.js';
import { judgeInContext } from '../context/judge-in-context.js';
import type { EventOf } from '../events.js';
import { walksDonor } from '../profile/donor.js';
import { type Plan, planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import { expectDonor } from './expect-donor.js';
import { judge } from './judge.js';
import { judgeHere, withReasons } from './judge-here.js';
import { unreadPin } from './open-walk.js';
import type { PinRecord, WalkState } from './state.js';
import { indexOfPin } from './whereabouts.js';

export interface Rejudged {
  readonly judged: EventOf<'pin-judged'>;
  /** The verdict stored in the session. */
  readonly before: EventOf<'pin-judged'>['verdict'];
}

/** Every captured pin of the patient that the profile also knows, in the session's order. */
export const rejudge = (state: WalkState, profile: Profile): readonly Rejudged[] => {
  const { t, accuracy } = state;
  const { plan, pins } = heldAgainstDonor(state, profile);
  const shifts = estimateShift(pins, plan, state.recheck?.shifts);
  const board = { plan, accuracy, pins, shifts };
  const judgements = new Map(
    judgeInContext(pins, plan, shifts, judge).map((judged) => [judged.pin, judged]),
  );
  return state.plan.pins.flatMap(({ pin, board: onBoard }): readonly Rejudged[] => {
    if (onBoard === 'donor') return [];
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

/** The walk as the profile lays it out, and of what the donor read, where it is normal by that profile, the patient's limits. */
const heldAgainstDonor = (
  state: WalkState,
  profile: Profile,
): { readonly plan: Plan; readonly pins: readonly PinRecord[] } => {
  const { accuracy } = state;
  const { function: measure, polarity } = state.plan;
  const donor = walksDonor(state.plan) ? 'beside' : undefined;
  const plan = planWalk(profile, { function: measure, polarity }, undefined, donor);
  const read = plan.pins.map(({ pin }) => state.pins[indexOfPin(state, pin)] ?? unreadPin);
  if (donor === undefined) return { plan, pins: read };
  const shifts = estimateShift(read, plan);
  const pins = read.map((record, index): PinRecord => {
    const planned = plan.pins[index];
    if (planned?.board !== 'donor' || record.touch === null || record.verdict === 'wobble') {
      return record;
    }
    const { verdict } = judgeHere({ plan, accuracy, pins: read, shifts }, planned, {
      ...record,
      verdict: 'unsure',
    });
    return { ...record, verdict };
  });
  return plan.pins.reduce((walk, { index }) => expectDonor(walk, index), { profile, plan, pins });
};
