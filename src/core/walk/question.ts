// The questions of the walk. An open line is invisible: probe in the air and probe on an open line read the
// same, so after a dwell the walk asks, and never steps by itself. Two taps on ground answer yes.

import type { ProbeSide } from '../inputs.js';
import type { PlannedPin } from '../profile/plan.js';
import { captureAnsweredOpen } from './capture.js';
import { standingOf } from './naming.js';
import { askedReply } from './pad-ear.js';
import type { WalkState } from './state.js';
import { awaitingDisplay, isTap, tapsAnswer } from './tap.js';
import type { Teller } from './teller.js';
import { cursorPin, likeliestWay, probedPin } from './whereabouts.js';

/** Seconds of overload at a pin before the walk asks. Common practice, no source. */
const dwellS = 2.5;
const longestPauseS = 1.6;
/** Overload after the second tap, so that a third touch is not under way. */
const quietS = 0.3;

export const askIfOpen = (teller: Teller): void => {
  const { state } = teller;
  const { probing } = state;
  const pin = probing === null ? pinToAskAbout(state) : probedPin(state, probing);
  if (pin === undefined || !isTimeToAsk(state)) return;
  teller.tell({
    type: 'question-asked',
    t: state.t,
    question: 'open',
    pin: pin.pin,
    ...(probing?.side === undefined ? {} : { place: placeOf(probing.part, probing.side) }),
  });
};

export const isTimeToAsk = (state: WalkState): boolean => {
  const { stage, question, hushed, t, reachedT, probing } = state;
  const { air } = state.contact;
  if (air === null || t - Math.max(air.from, reachedT) < dwellS) return false;
  if (hushed || askedReply(state) !== null) return false;
  if (question !== null && !mayGiveWay(state)) return false;
  if (probing !== null) return true;
  return (
    stage === 'walking' &&
    likeliestWay(state).stage !== 'confirming' &&
    standingOf(state.alignment).share >= likelyHere
  );
};

/** Calls after which nobody seems to listen: then a line that shows nothing is asked about all the same. */
const unheardAfter = 2;

const mayGiveWay = ({ question, calls }: WalkState): boolean =>
  question?.question === 'same-or-next' ||
  (question?.question === 'go-back' && calls.unfollowed >= unheardAfter);

/**
 * Where the walk does not know whether the last touch was the same pin or the next, a dwell in the air says that the
 * technician has gone on to a line that shows nothing: an answer there tells more than waiting for a touch.
 */
const likelyHere = 0.5;

const pinToAskAbout = (state: WalkState): PlannedPin | undefined => {
  const { at, sure } = standingOf(state.alignment);
  return sure ? cursorPin(state) : state.plan.pins[at];
};

const placeOf = (part: string | undefined, side: ProbeSide) =>
  part === undefined ? { side } : { part, side };

/** Two taps on ground while the question stands say "yes, open". */
export const answerByTaps = (teller: Teller): void => {
  const { state } = teller;
  const { question, contact } = state;
  if (question === null || !tapsAnswer(state) || contact.air === null) return;
  const [first, second] = contact.ended.slice(-2);
  if (first === undefined || second === undefined) return;
  if (first.from < question.t || state.t - contact.air.from < quietS) return;
  if (!isTap(state, first) || !isTap(state, second)) return;
  if (second.from - first.to > awaitingDisplay(longestPauseS, state)) return;
  teller.tell({
    type: 'question-answered',
    t: state.t,
    question: 'open',
    pin: question.pin,
    by: 'ground-taps',
  });
  captureAnsweredOpen(teller, state.t);
};
