// The technician who hears the program: moves on when a pin is agreed, touches again what is not, answers
// "open?", does what a stop asks for, and goes where the program says. Never acts before it has heard.
import type { Numbered } from '../core/events.js';
import type { AnswerWay } from './bench-name.js';
import { type Body, type Gesture, listen } from './body.js';
import { hold, land, lift, react, tapGroundTwice, untilShown } from './gestures.js';
import { checkGroundsByEar } from './ground-check.js';
import { draw } from './pace.js';
import { giveByPad } from './pad-hands.js';
import { isPressBegun, pressAnnounced, pressByEar } from './press-by-ear.js';
import { askToProbe, probeByEar } from './probe-by-ear.js';
import { readyByEar } from './ready-by-ear.js';
import { setRight, waitInTheAir } from './set-right.js';

/** What a visit ended with: the place to go to next. */
interface Onward {
  readonly to: number;
  /** The program has not said yet which pin it took this one for. */
  readonly doubted?: true;
}

export function* listenAndWalk(body: Body, answers: AnswerWay, probes = false): Gesture<void> {
  let place = yield* begin(body);
  for (;;) {
    let doubted = false;
    while (place < body.profile.connector.pins.length) {
      const onward: Onward = yield* visit(body, place, answers, doubted);
      place = onward.to;
      doubted = onward.doubted ?? false;
    }
    place = yield* rest(body, answers, probes);
  }
}

/** Longer than the program waits before it asks for the pin at which a walk without a beginning stands. */
const listenFirstS = 3.5;

/** The first place to walk to: pin 1 after the ground check, or where the walk stands already. */
function* begin(body: Body): Gesture<number> {
  const untilS = body.nowS + listenFirstS;
  for (
    let heard = yield* listen(body, untilS);
    heard !== null;
    heard = yield* listen(body, untilS)
  ) {
    const place = 'pin' in heard ? placeOf(body, heard.pin) : null;
    // The question still waits for its answer there.
    if (heard.type === 'question-asked') body.inbox.unshift(heard);
    if (place !== null) return place;
    if (heard.type === 'session-opened') yield* readyByEar(body, heard);
    if (heard.type === 'session-opened' && !heard.groundCheck) return 0;
    if (heard.type === 'session-opened') break;
  }
  yield* checkGroundsByEar(body);
  return 0;
}

function* visit(
  body: Body,
  place: number,
  answers: AnswerWay,
  doubtedBefore: boolean,
): Gesture<Onward> {
  const { pace, random } = body;
  const pin = body.profile.connector.pins[place]?.pin;
  let doubted = doubtedBefore;
  let asked = false;
  let waited = false;
  let captured = false;
  yield* land(body, place);
  const landedS = body.nowS;
  let patientToS = landedS + pace.patienceS;
  for (;;) {
    const heard: Numbered | null = yield* hold(body, patientToS);
    if (heard === null) {
      if (asked && (yield* staysOpen(body))) {
        // A pad that is not heard may be out of use: then ground is tapped.
        if (answers === 'pads' && (yield* giveByPad(body, 'open')))
          return yield* afterReply(body, place);
        const taken = yield* answerOpen(body, answers, pin);
        if (taken === 'agreed' && !pressAnnounced(body)) return { to: place + 1 };
        asked = taken === 'nothing';
        yield* touchAgain(body, place);
        patientToS = body.nowS + draw(random, pace.sureS);
        continue;
      }
      // Nothing reads here, so nothing tells what the pin before was: the technician does.
      if (doubted && answers === 'pads') yield* giveByPad(body, 'next');
      // Whoever hears nothing more here goes back to where the program knew the place.
      if (doubted && waited) {
        yield* lift(body);
        return { to: Math.max(0, place - 1), doubted };
      }
      // A line that reads answers the question by itself, given time.
      if (!asked || waited) yield* touchAgain(body, place);
      waited = doubted || (asked && !waited);
      patientToS = body.nowS + pace.patienceS;
      continue;
    }
    const called = calledTo(body, heard);
    if (called !== null && called !== place) {
      yield* react(body);
      yield* lift(body);
      return { to: called };
    }
    if (heard.type === 'probe-begun') {
      yield* probeByEar(body, heard, answers);
      return { to: calledOn(body) ?? place };
    }
    if (isPressBegun(heard)) {
      yield* pressByEar(body, heard);
      return { to: calledOn(body) ?? (placeOf(body, heard.pin) ?? place) + 1 };
    }
    switch (heard.type) {
      case 'walk-finished':
        if (pressAnnounced(body)) continue;
        return { to: body.profile.connector.pins.length };
      case 'walk-paused':
        yield* waitInTheAir(body, place, heard.reason);
        break;
      case 'walk-held':
        yield* setRight(body, place, heard.reason);
        break;
      case 'touch-captured':
        captured ||= heard.t >= landedS;
        continue;
      case 'question-asked':
        if (heard.question === 'go-back') {
          const back = placeOf(body, heard.pin);
          if (back === null) continue;
          yield* react(body);
          yield* lift(body);
          return { to: back };
        }
        if (heard.question === 'same-or-next') {
          // Said on the way here it was about the touch before.
          if (!captured) continue;
          // It was read and only its name is in doubt: the next pin tells more than the same one again.
          yield* react(body);
          yield* lift(body);
          return { to: place + 1, doubted: true };
        }
        if (heard.pin !== pin) continue;
        asked = true;
        doubted = false;
        patientToS = body.nowS + draw(random, pace.sureS);
        continue;
      case 'question-answered':
        if (heard.pin === pin) asked = false;
        continue;
      case 'session-resumed':
        asked = false;
        continue;
      case 'pin-judged':
        if (heard.pin !== pin) continue;
        asked = false;
        yield* react(body);
        if (heard.agreed) {
          if (pressAnnounced(body)) continue;
          if (isInDoubt(body, place) && (yield* giveByPad(body, 'press-test'))) continue;
          yield* lift(body);
          return { to: place + 1 };
        }
        yield* touchAgain(body, place);
        break;
      case 'reply-cancelled':
        // What was said of the pin before does not count: it is said again.
        if (heard.reply !== 'open') continue;
        yield* lift(body);
        return { to: Math.max(0, place - 1) };
      default:
        continue;
    }
    patientToS = body.nowS + pace.patienceS;
  }
}

/** The reply counts once another pin is read; after the last one it is waited for. */
function* afterReply(body: Body, place: number): Gesture<Onward> {
  const last = body.profile.connector.pins.length - 1;
  if (place < last) return { to: place + 1 };
  const untilS = body.nowS + longestPatienceS;
  for (
    let heard = yield* listen(body, untilS);
    heard !== null;
    heard = yield* listen(body, untilS)
  ) {
    if (heard.type !== 'reply-given') continue;
    return pressAnnounced(body) ? { to: place } : { to: place + 1 };
  }
  return { to: place };
}

/** Longer than a reply waits in the air before it counts. */
const longestPatienceS = 15;

const isInDoubt = (body: Body, place: number): boolean =>
  body.pads.length > 0 && body.doubts.includes(body.profile.connector.pins[place]?.line ?? '');

/** A slip looks open too, but not for long. */
function* staysOpen(body: Body): Gesture<boolean> {
  yield* untilShown(body, body.pace.slipS[1] + 2 / body.readingsPerS);
  return !body.reach.showsValue();
}

function* touchAgain(body: Body, place: number): Gesture<void> {
  if (body.probing.pinIndex !== null) yield* lift(body);
  yield* land(body, place);
}

/** Gives the answer and waits whether the program takes it, as an answer or as something else. */
function* answerOpen(
  body: Body,
  answers: AnswerWay,
  pin: string | undefined,
): Gesture<'agreed' | 'answered' | 'nothing'> {
  if (answers === 'key' && body.reach.act !== undefined) body.reach.act({ act: 'open' });
  else yield* tapGroundTwice(body);
  let answered = false;
  const untilS = body.nowS + Math.max(1.5, 5 / body.readingsPerS);
  for (
    let heard = yield* listen(body, untilS);
    heard !== null;
    heard = yield* listen(body, untilS)
  ) {
    // Nobody remembers a question from before.
    if (heard.type === 'question-answered' || heard.type === 'session-resumed') answered = true;
    if (heard.type !== 'pin-judged' || heard.pin !== pin || !heard.agreed) continue;
    yield* react(body);
    if (body.probing.pinIndex !== null) yield* lift(body);
    return 'agreed';
  }
  return answered ? 'answered' : 'nothing';
}

/** Nothing left to walk: probes what is proposed, if that is the habit, until the program calls somewhere again. */
function* rest(body: Body, answers: AnswerWay, probes: boolean): Gesture<number> {
  if (body.probing.pinIndex !== null) yield* lift(body);
  if (probes) yield* askToProbe(body);
  for (;;) {
    const heard = yield* listen(body, Number.POSITIVE_INFINITY);
    if (heard?.type === 'probe-begun') {
      yield* probeByEar(body, heard, answers);
      if (probes) yield* askToProbe(body);
      continue;
    }
    const asked = heard?.type === 'question-asked' ? placeOf(body, heard.pin) : null;
    if (heard !== null && asked !== null) {
      // It is not done yet: the question waits for its answer at that pin.
      body.inbox.unshift(heard);
      return asked;
    }
    if (heard !== null && isPressBegun(heard)) {
      yield* pressByEar(body, heard);
      if (probes) yield* askToProbe(body);
      continue;
    }
    const called = heard === null ? null : calledTo(body, heard);
    if (called !== null) return called;
  }
}

const calls = ['pin-reached', 'walk-continued', 'walk-realigned'] as const;

/** Where an event sends the hands, or null. The place being visited is no news. */
const calledTo = (body: Body, heard: Numbered): number | null =>
  calls.some((type) => type === heard.type) && 'pin' in heard ? placeOf(body, heard.pin) : null;

/** Where the program has called already, before anything more is heard. */
const calledOn = (body: Body): number | null =>
  body.inbox.reduce<number | null>((place, heard) => place ?? calledTo(body, heard), null);

const placeOf = (body: Body, pin: string | undefined): number | null => {
  const at = body.profile.connector.pins.findIndex((known) => known.pin === pin);
  return at < 0 ? null : at;
};
