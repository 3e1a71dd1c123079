// What readings tell of one another: how this meter reads a class of lines, and verdicts that another reading puts
// in another light. Told without a new touch.
import type { Shift } from '../context/estimate-shift.js';
import { judgeInContext } from '../context/judge-in-context.js';
import { shiftClasses } from '../context/shift-class.js';
import { namesOf } from '../profile/plan.js';
import { judge } from './judge.js';
import { type Found, judgeHere, withReasons } from './judge-here.js';
import type { Teller } from './teller.js';

/** Says how this meter reads, where that is news: it comes or goes, or moves by more than its uncertainty. */
export const tellShifts = (teller: Teller, t: number): void =>
  tellWhere(teller, t, (before, now) => distance(before, now) > (now?.standardUncertainty ?? 0));

const tellWhere = (
  teller: Teller,
  t: number,
  isNews: (before: Shift | null, now: Shift | null) => boolean,
): void => {
  for (const lines of shiftClasses) {
    const shift = teller.state.shifts[lines];
    if (isNews(teller.state.shiftsTold[lines], shift)) {
      teller.tell({ type: 'shift-estimated', t, lines, shift });
    }
  }
};

const distance = (before: Shift | null, now: Shift | null): number => {
  if (before === null || now === null) return before === now ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(amountOf(now) - amountOf(before));
};

const amountOf = (shift: Shift): number => ('scale' in shift ? shift.scale : shift.offset);

/** Judges the mate of a pin once more, now that this one is read. */
export const tellMate = (teller: Teller, t: number, index: number): void => {
  const { plan } = teller.state;
  const line = plan.pins[index]?.mate;
  for (const mate of plan.pins) {
    const read = mate.line === line ? teller.state.pins[mate.index] : undefined;
    if (read === undefined || read.touch === null || read.verdict === 'wobble') continue;
    tellAnew(teller, t, mate.index, judgeHere(teller.state, mate, read));
  }
};

/** Every verdict as all readings together have it: at the end of a walk. */
export const tellContext = (teller: Teller, t: number): void => {
  tellWhere(teller, t, (before, now) => distance(before, now) > 0);
  const { state } = teller;
  for (const judged of judgeInContext(state.pins, state.plan, state.shifts, judge)) {
    const pin = state.plan.pins[judged.index];
    const read = state.pins[judged.index];
    if (pin === undefined || read === undefined) continue;
    tellAnew(teller, t, judged.index, withReasons(judged, pin, read, state));
  }
};

const tellAnew = (teller: Teller, t: number, index: number, now: Found): void => {
  const { plan, pins } = teller.state;
  const pin = plan.pins[index];
  const before = pins[index];
  if (pin === undefined || before === undefined) return;
  if (before.verdict === now.verdict && before.advice === now.advice) return;
  const { agreed } = before;
  teller.tell({
    type: 'pin-judged',
    t,
    ...namesOf(pin),
    ...now,
    agreed,
    anew: true,
  });
};
