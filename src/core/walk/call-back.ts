// Two boards walked in turns: where the walk is not sure which pin of which board was touched, it names nothing by
// guess. It calls the technician back to the last donor pin that is known, and both boards are touched again from there.
import { walksDonor } from '../profile/donor.js';
import { type CalledBack, isUnknownInTurns } from './in-turns.js';
import { nameCaptures, surelyNamed } from './naming.js';
import type { WalkState } from './state.js';
import type { Teller } from './teller.js';
import { indexOfPin } from './whereabouts.js';

/** Says where to touch again; said once more of every touch after which it is still not known where the probe is. */
export const callBack = (teller: Teller, t: number): void => {
  const { question, plan, nextTouch } = teller.state;
  if (question?.question === 'go-back' && question.touch >= nextTouch) return;
  const pin = plan.pins[lastKnown(teller.state)];
  if (pin === undefined) return;
  teller.tell({ type: 'question-asked', t, question: 'go-back', pin: pin.pin });
};

/** Called so often to one pin, going back does not tell: two pins there read too much alike (design decision). */
const vainCalls = 3;

/** Where values are expected, the touch after the next mostly tells: so often it is waited for (design decision). */
const patientDoubts = 3;

/**
 * Is the technician called back in doubt? Where going back to the pin that is known has told nothing, going on may;
 * and so it may where the profile knows the lines.
 */
export const isCalledBack = (state: WalkState): boolean => {
  const { calls } = state;
  if (!walksDonor(state.plan)) return false;
  if (!isUnknownInTurns(state.plan)) return calls.doubts >= patientDoubts;
  return calls.times < vainCalls || calls.pin !== state.plan.pins[lastKnown(state)]?.pin;
};

/** The place that the technician was called back to, while that stands. */
export const calledBack = (state: WalkState): CalledBack | null => {
  const { question, pins, calls } = state;
  if (question?.question !== 'go-back') return null;
  const index = indexOfPin(state, question.pin);
  return { index, value: pins[index]?.value ?? null, unfollowed: calls.unfollowed };
};

/** The donor's pin of the newest pair before which every way agrees with what was told, and which reads something. */
const lastKnown = ({
  alignment,
  named,
  pins,
  plan,
}: Pick<WalkState, 'alignment' | 'named' | 'pins' | 'plan'>): number => {
  let known = 0;
  for (const { capture, index, probability } of nameCaptures(alignment).toReversed()) {
    const told = named.find((one) => one.capture.touch === capture);
    if (probability < surelyNamed || (told !== undefined && told.index !== index)) break;
    known = index;
  }
  while (known > 0 && (plan.pins[known]?.board !== 'donor' || pins[known]?.value == null)) {
    known -= 1;
  }
  return known;
};
