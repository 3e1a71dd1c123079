// The technician who hears the program: moves on when a pin is agreed, touches again what is not, answers
// "open?", does what a stop asks for, and goes where the program says. Never acts before it has heard.
import type { EventOf, HoldReason, Numbered } from '../core/events.js';
import type { AnswerWay } from './bench-name.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { hold, keepStill, land, lift, tapGroundTwice } from './gestures.js';
import { checkGroundsByEar } from './ground-check.js';
import { draw } from './pace.js';

/** What a visit ended with: the place to go to next. */
interface Onward {
  readonly to: number;
}

export function* listenAndWalk(body: Body, answers: AnswerWay): Gesture<void> {
  let place = yield* begin(body);
  for (;;) {
    while (place < body.profile.connector.pins.length) {
      const onward: Onward = yield* visit(body, place, answers);
      place = onward.to;
    }
    place = yield* rest(body);
  }
}

/** The first place to walk to: pin 1 after the ground check, or where a resumed walk stands. */
function* begin(body: Body): Gesture<number> {
  for (let known = false; !known; ) {
    const heard = yield* listen(body, body.nowS + 1);
    if (heard === null) break;
    const called = calledTo(body, heard);
    if (called !== null) return called;
    known = heard.type === 'session-opened';
    if (heard.type === 'session-opened' && !heard.groundCheck) return 0;
  }
  yield* checkGroundsByEar(body);
  return 0;
}

function* visit(body: Body, place: number, answers: AnswerWay): Gesture<Onward> {
  const { pace, random } = body;
  const pin = body.profile.connector.pins[place]?.pin;
  let questionStands = false;
  yield* land(body, place);
  for (;;) {
    const waitS: number = questionStands ? draw(random, pace.sureS) : pace.patienceS;
    const heard: Numbered | null = yield* hold(body, body.nowS + waitS);
    if (heard === null) {
      if (questionStands && !body.reach.showsValue()) {
        questionStands = false;
        yield* answerOpen(body, answers);
        if (yield* agreedSoon(body, pin)) return { to: place + 1 };
      }
      yield* touchAgain(body, place);
      continue;
    }
    const called = calledTo(body, heard);
    if (called !== null && called !== place) {
      yield* react(body);
      yield* lift(body);
      return { to: called };
    }
    if (heard.type === 'walk-finished') return { to: body.profile.connector.pins.length };
    if (heard.type === 'walk-paused') yield* waitInTheAir(body, place, heard.reason);
    if (heard.type === 'walk-held') yield* setRight(body, place, heard.reason);
    if (!('pin' in heard) || heard.pin !== pin) continue;
    if (heard.type === 'question-asked') {
      questionStands = heard.question === 'open';
      // In doubt which pin was read, the same touch once more is the plainest answer.
      if (!questionStands) yield* touchAgain(body, place);
    }
    if (heard.type === 'question-answered') questionStands = false;
    if (heard.type === 'pin-judged') {
      questionStands = false;
      yield* react(body);
      if (heard.agreed) {
        yield* lift(body);
        return { to: place + 1 };
      }
      yield* touchAgain(body, place);
    }
  }
}

function* touchAgain(body: Body, place: number): Gesture<void> {
  if (body.probing.pinIndex !== null) yield* lift(body);
  yield* land(body, place);
}

function* answerOpen(body: Body, answers: AnswerWay): Gesture<void> {
  if (answers === 'key' && body.reach.act !== undefined) body.reach.act({ act: 'open' });
  else yield* tapGroundTwice(body);
}

/** After an answer: does the program take it? */
function* agreedSoon(body: Body, pin: string | undefined): Gesture<boolean> {
  const untilS = body.nowS + Math.max(2.5, 6 / body.readingsPerS);
  for (let heard = yield* listen(body, untilS); heard !== null; heard = yield* listen(body, untilS))
    if (heard.type === 'pin-judged' && heard.pin === pin && heard.agreed) {
      yield* react(body);
      if (body.probing.pinIndex !== null) yield* lift(body);
      return true;
    }
  return false;
}

/** Removes what the program stops for, then touches the pin again. */
function* setRight(body: Body, place: number, reason: HoldReason): Gesture<void> {
  yield* react(body);
  yield* lift(body);
  if (reason === 'negative') {
    yield* pass(body, 1.5);
    body.reach.discharge(place);
  } else if (reason === 'ground-lost') {
    const ground = body.goodGrounds.find((at) => at !== place);
    if (ground !== undefined) {
      yield* land(body, ground);
      yield* keepStill(body, Math.max(1.2, 5 / body.readingsPerS));
      yield* lift(body);
    }
  } else {
    yield* pass(body, 1);
    body.reach.resetMeter();
  }
  yield* land(body, place);
}

function* waitInTheAir(
  body: Body,
  place: number,
  reason: EventOf<'walk-paused'>['reason'],
): Gesture<void> {
  yield* react(body);
  yield* lift(body);
  if (reason === 'meter-silent') body.reach.resetMeter();
  for (;;) {
    const heard = yield* listen(body, Number.POSITIVE_INFINITY);
    if (heard?.type === 'walk-continued') break;
  }
  yield* land(body, place);
}

/** Nothing left to touch: waits until the program calls somewhere again. */
function* rest(body: Body): Gesture<number> {
  if (body.probing.pinIndex !== null) yield* lift(body);
  for (;;) {
    const heard = yield* listen(body, Number.POSITIVE_INFINITY);
    const called = heard === null ? null : calledTo(body, heard);
    if (called !== null) return called;
  }
}

function* react(body: Body): Gesture<void> {
  yield* keepStill(body, draw(body.random, body.pace.reactionS));
}

const calls = ['pin-reached', 'walk-continued', 'walk-realigned'] as const;

/** Where an event sends the hands, or null. The place being visited is no news. */
const calledTo = (body: Body, heard: Numbered): number | null => {
  if (!calls.some((type) => type === heard.type) || !('pin' in heard)) return null;
  const at = body.profile.connector.pins.findIndex(({ pin }) => pin === heard.pin);
  return at < 0 ? null : at;
};
