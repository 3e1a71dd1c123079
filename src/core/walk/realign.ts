// When a run of later captures fits the connector one place along better: says so, offers the move while it is
// only likely, and makes it once it is as good as certain. Captures told under a wrong name are told anew.
import { callBack } from './call-back.js';
import { isUnknownInTurns } from './in-turns.js';
import type { Naming } from './naming.js';
import { findNaming } from './naming.js';
import type { Capture, WalkState } from './state.js';
import type { Teller } from './teller.js';
import { unreadAt } from './unread.js';

/** Probability with which a name already given is taken back, and with which that is offered (design decision). */
const surelyMoved = 0.9999;
const likelyMoved = 0.9;

type TellCapture = (teller: Teller, t: number, capture: Capture, naming: Naming) => void;

interface Moved {
  readonly capture: Capture;
  readonly naming: Naming;
  readonly from: number;
}

export const realign = (
  teller: Teller,
  t: number,
  namings: readonly Naming[],
  because: 'act' | 'fits-better',
  tellCapture: TellCapture,
): void => {
  const moved = movedCaptures(teller.state, namings);
  if (isUnknownInTurns(teller.state.plan)) {
    if (isLikelyMoved(moved)) takeBack(teller, t, moved);
    return;
  }
  const sure = moved.filter(({ naming }) => naming.probability >= surelyMoved);
  const last = sure.at(-1);
  if (last !== undefined) {
    answerByReading(teller, t);
    move(teller, t, sure, last, because);
    for (const { capture, naming } of sure) tellCapture(teller, t, capture, naming);
    return;
  }
  offer(teller, t, moved.at(-1));
};

/** Told captures that most probably belong to another pin, oldest first. */
const movedCaptures = (
  { named, alignment }: WalkState,
  namings: readonly Naming[],
): readonly Moved[] => {
  const moved: Moved[] = [];
  const oldest = namings.at(-1)?.capture ?? 0;
  for (const { capture, index } of named) {
    // Further back than this every way agrees with what was told.
    if (capture.touch < oldest) continue;
    const naming = findNaming(namings, alignment, capture.touch);
    if (naming !== null && naming.index !== index) moved.push({ capture, naming, from: index });
  }
  return moved;
};

const move = (
  teller: Teller,
  t: number,
  moved: readonly Moved[],
  last: Moved,
  because: 'act' | 'fits-better',
): void => {
  const { plan } = teller.state;
  teller.tell({
    type: 'walk-realigned',
    t,
    shift: last.naming.index - last.from,
    pin: plan.pins[last.naming.index]?.pin ?? '',
    because,
  });
  const filled = new Set(moved.map(({ naming }) => naming.index));
  for (const { from } of moved) {
    const pin = plan.pins[from];
    if (filled.has(from) || pin === undefined) continue;
    teller.tell(unreadAt(t, pin));
  }
};

const isLikelyMoved = (moved: readonly Moved[]): boolean =>
  moved.some(({ naming }) => naming.probability >= likelyMoved);

/** Of two boards in turns nothing is renamed: what was told is unread again, and both are touched anew from there. */
const takeBack = (teller: Teller, t: number, moved: readonly Moved[]): void => {
  const { plan } = teller.state;
  callBack(teller, t);
  for (const { from } of moved) {
    const pin = plan.pins[from];
    if (pin !== undefined) teller.tell(unreadAt(t, pin));
  }
};

/** Asks about the pin that the newest of them would belong to; takes the question back when it fits no more. */
const offer = (teller: Teller, t: number, last: Moved | undefined): void => {
  const { question, plan } = teller.state;
  if (last === undefined || last.naming.probability < likelyMoved) {
    answerByReading(teller, t);
    return;
  }
  const pin = plan.pins[last.naming.index];
  if (question !== null || pin === undefined) return;
  teller.tell({ type: 'question-asked', t, question: 'shifted', pin: pin.pin });
};

const answerByReading = (teller: Teller, t: number): void => {
  const { question } = teller.state;
  if (question?.question !== 'shifted') return;
  teller.tell({
    type: 'question-answered',
    t,
    question: 'shifted',
    pin: question.pin,
    by: 'reading',
  });
};
