// Gives captures their pins' names as soon as nearly every way agrees, and says where the walk stands.
import type { EventOf } from '../events.js';
import { namesOf } from '../profile/plan.js';
import { callBack, isCalledBack } from './call-back.js';
import { judgeHere, readIn } from './judge-here.js';
import { findNaming, type Naming, nameCaptures, standingOf, surelyNamed } from './naming.js';
import { readingOf } from './reading-of.js';
import { realign } from './realign.js';
import { asksForPlace } from './said.js';
import type { Capture, WalkState } from './state.js';
import { tallyPins } from './tally.js';
import { tellContext, tellMate, tellShifts } from './tell-context.js';
import { tellControl } from './tell-recheck.js';
import type { Teller } from './teller.js';
import { likeliestWay } from './whereabouts.js';

/** Opens in a row after which the ground clip is in doubt. Common practice, no source. */
const opensThatDoubtGround = 2;

/** Names every pending capture whose pin is known by now, and takes names back that were wrong. */
export const tellCaptures = (teller: Teller, t: number, because: 'act' | 'fits-better'): void => {
  const { alignment } = teller.state;
  const namings = nameCaptures(alignment);
  realign(teller, t, namings, because, tellCapture);
  for (const capture of teller.state.pending) {
    const naming = findNaming(namings, alignment, capture.touch);
    if (naming !== null && naming.probability >= surelyNamed) {
      tellCapture(teller, t, capture, naming);
    }
  }
};

/** Says which pin is next, that it is in doubt, or that the walk is finished. */
export const tellPlace = (teller: Teller, t: number, again: boolean): void => {
  const { state } = teller;
  const { plan, question, cursor } = state;
  const { at, sure } = standingOf(state.alignment);
  if (!sure) {
    if (isCalledBack(state)) {
      callBack(teller, t);
      return;
    }
    const pin = plan.pins[Math.min(cursor, plan.pins.length - 1)];
    if (pin !== undefined && (question === null || isAskedOfEarlier(state))) {
      teller.tell({ type: 'question-asked', t, question: 'same-or-next', pin: pin.pin });
    }
    return;
  }
  if (question !== null && asksForPlace(state)) {
    const { pin } = question;
    teller.tell({ type: 'question-answered', t, question: question.question, pin, by: 'contact' });
  }
  const pin = plan.pins[at];
  if (pin === undefined) {
    if (state.stage !== 'walking') return;
    tellContext(teller, t);
    teller.tell({ type: 'walk-finished', t, tally: tallyPins(teller.state) });
  } else if (again || at !== cursor || state.stage === 'finished') {
    teller.tell({ type: 'pin-reached', t, ...namesOf(pin) });
  }
};

/** "Same or next?" was asked of a touch before the latest: without a word nobody knows that this one was read. */
const isAskedOfEarlier = ({ question, nextTouch }: WalkState): boolean =>
  question?.question === 'same-or-next' && question.touch < nextTouch;

const tellCapture = (teller: Teller, t: number, capture: Capture, naming: Naming): void => {
  const { state } = teller;
  const pin = state.plan.pins[naming.index];
  if (pin === undefined) return;
  teller.tell({
    type: 'pin-settled',
    t,
    touch: capture.touch,
    ...namesOf(pin),
    ...readingOf(capture, state.plan.function),
  });
  const judgement = judgeHere(teller.state, pin, readIn(capture, teller.state));
  const way = likeliestWay(state);
  // Whatever the walk has gone past is settled business.
  const agreed = way.index !== naming.index || way.stage === 'done';
  const verdict = capture.wobble === true ? 'wobble' : judgement.verdict;
  const before = state.pins[naming.index];
  // A capture revised by a few counts is no news for the ear.
  const told = before?.touch === capture.touch && before.verdict === verdict;
  if (told && before.agreed === agreed) return;
  const judged: EventOf<'pin-judged'> = {
    type: 'pin-judged',
    t,
    ...namesOf(pin),
    ...judgement,
    ...(capture.wobble === true ? ({ verdict: 'wobble', advice: 'hold-longer' } as const) : {}),
    agreed,
  };
  teller.tell(judged);
  tellShifts(teller, t);
  tellMate(teller, t, naming.index);
  if (judged.agreed) tellControl(teller, t, judged.pin);
  if (teller.state.opensInARow >= opensThatDoubtGround) {
    teller.tell({ type: 'ground-doubted', t, opens: teller.state.opensInARow });
  }
};
