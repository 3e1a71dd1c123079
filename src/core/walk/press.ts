// What a walk decides while a press test is under way: when to say press and release, when a place is judged,
// which place comes next, and what all of them together say.
import type { EventOf } from '../events.js';
import { answers, compareParts } from '../press/compare-parts.js';
import { drawsFor } from '../press/draws.js';
import { type FreeStage, freeOutcome, type Turn, turnOf } from '../press/free-stage.js';
import { judgedPress } from '../press/judge-press.js';
import { judgeRecord } from '../press/judge-record.js';
import { paceFor } from '../press/pace.js';
import { type PressStage, shamPlace } from '../press/press-stage.js';
import { nextCue } from '../press/press-test.js';
import { recorded } from '../press/record.js';
import { planCues } from '../press/schedule.js';
import { tracedPress } from '../press/traced-press.js';
import { periodOf } from './press-alone.js';
import { tellPlace } from './tell.js';
import type { Teller } from './teller.js';
import { indexOfPin, pinReadLast } from './whereabouts.js';

/** Seconds to take the tool and find the part before its test begins. Common practice, no source. */
const leadInS = 3;
/** Seconds to find a pin again that the probe has left. Common practice, no source. */
const findPinS = 3;

/** Begins on a pin, with the parts the session or else the profile names along its line. */
export const beginPressTest = (teller: Teller, t: number, pin: string): void => {
  const { alone, plan, partsOf } = teller.state;
  const planned = plan.pins[indexOfPin(teller.state, pin)];
  if (planned === undefined) return;
  const { line } = planned;
  const places = [...(alone?.parts ?? partsOf.get(line) ?? [])];
  const isLeft = pinReadLast(teller.state)?.pin !== pin;
  if (alone?.free === true) teller.tell({ type: 'press-begun', t, pin, line, places, free: true });
  else {
    teller.tell({ type: 'press-begun', t, pin, line, places });
    goTo(teller, t, places[0] ?? null, isLeft ? findPinS : 0);
  }
};

/** Gives the cues that are due, and goes on when the place is judged. */
export const stepPress = (teller: Teller): void => {
  for (let stage = teller.state.press; stage !== null; stage = teller.state.press) {
    const turn = stage.free === null ? null : turnOf(stage.free);
    if (turn !== null) {
      tellTurn(teller, stage.line, turn);
      continue;
    }
    if (stage.result !== null) {
      finishPlace(teller, stage);
      continue;
    }
    const due = stage.cues[stage.given];
    if (due === undefined || stage.test === null || due.t > teller.state.t) return;
    const cue = due.cue === 'press' ? nextCue(stage.test, due.t) : due.cue;
    teller.tell({ type: 'cue-given', t: teller.state.t, cue, place: stage.place });
  }
};

/** After a pause the place is pressed anew: nobody was there to answer the cues in between. */
export const pressAnew = (teller: Teller, t: number): void => {
  const { press } = teller.state;
  if (press !== null && press.free === null) goTo(teller, t, press.place);
};

export const endPress = (
  teller: Teller,
  t: number,
  reason: EventOf<'press-ended'>['reason'],
): void => {
  const { press } = teller.state;
  if (press === null) return;
  if (press.free !== null) tellFree(teller, t, press, press.free);
  if (press.pressed.length > 0) {
    const { outcome, parts, shamPressed } = compareParts(press.pressed);
    teller.tell({
      type: 'press-compared',
      t,
      line: press.line,
      outcome,
      parts: [...parts],
      shamPressed,
    });
  }
  teller.tell({
    type: 'press-ended',
    t,
    pin: press.pin,
    reason: press.free === null ? reason : 'done',
  });
  if (teller.state.alone === null) tellPlace(teller, t, true);
};

const tellTurn = (teller: Teller, line: string, { reads, value }: Turn): void => {
  const { t } = teller.state;
  if (reads && value !== null) teller.tell({ type: 'reading-returned', t, line, value });
  else teller.tell({ type: 'reading-lost', t, line, value });
};

/** What the technician marked is judged as well. */
const tellFree = (
  teller: Teller,
  t: number,
  { line, place }: PressStage,
  free: FreeStage,
): void => {
  const outcome = freeOutcome(free);
  teller.tell(tracedPress(t, line, place, outcome));
  if (outcome.marked === null) return;
  teller.tell(judgedPress(t, judgeRecord(free.setup, recorded(free.record))));
};

const finishPlace = (teller: Teller, stage: PressStage): void => {
  const { t } = teller.state;
  if (stage.result === null) return;
  teller.tell(judgedPress(t, stage.result));
  const next = nextPlace(teller.state.press ?? stage);
  if (next === undefined) endPress(teller, t, 'done');
  else goTo(teller, t, next);
};

/** Every part in order; then bare board, if anything answered that it could explain. */
const nextPlace = ({ parts, pressed }: PressStage): string | undefined => {
  const part = parts[pressed.length];
  if (part !== undefined) return part;
  const answered = pressed.some(({ result }) => answers(result));
  return answered && !pressed.some(({ sham }) => sham) ? shamPlace : undefined;
};

const goTo = (teller: Teller, t: number, place: string | null, findS = 0): void => {
  const { alone, contact, pressTests, seed } = teller.state;
  const periodS = alone === null ? contact.clock.periodS : periodOf(alone);
  const startS = t + findS + leadInS;
  const cues = planCues(paceFor(periodS), startS, drawsFor(seed, pressTests));
  teller.tell({ type: 'press-moved', t, place, sham: place === shamPlace, cues });
};
