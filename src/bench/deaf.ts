// The technician who does not hear the program, as over TCP or a pseudo-terminal: goes by the meter's display
// and by knowing the board. Holds each pin until its reading stands, touches again what is not normal, and
// answers with two ground taps after the time at which the program will have asked.
import type { Board } from './board.js';
import { type Body, type Gesture, pass } from './body.js';
import { keepStill, land, lift, tapGroundTwice, untilShown } from './gestures.js';
import { checkGroundsByPatience } from './ground-check.js';
import { draw } from './pace.js';

/** What this technician knows about each place: the meter shows it, and the profile says what to expect. */
export interface Known {
  readonly board: Board;
  isNormal(place: number): boolean;
  /** Does the meter show a number there, on the range in use? */
  reads(place: number): boolean;
}

export function* walkByPatience(body: Body, known: Known): Gesture<void> {
  yield* pass(body, 1);
  yield* checkGroundsByPatience(body);
  for (const place of body.profile.connector.pins.keys()) {
    yield* land(body, place);
    if (known.reads(place)) yield* readPin(body, known, place);
    else yield* answerOpen(body);
  }
}

function* readPin(body: Body, known: Known, place: number): Gesture<void> {
  yield* readOnce(body, known, place);
  if (known.isNormal(place)) return;
  yield* land(body, place);
  yield* readOnce(body, known, place);
}

function* readOnce(body: Body, known: Known, place: number): Gesture<void> {
  yield* untilShown(body, 6);
  yield* keepStill(body, holdS(body, known, place));
  yield* lift(body);
}

function* answerOpen(body: Body): Gesture<void> {
  const { pace, random } = body;
  const askedS = pace.questionAfterS + Math.max(2 / body.readingsPerS, 0.2);
  yield* keepStill(body, askedS + draw(random, pace.deafMarginS));
  yield* tapGroundTwice(body);
  yield* pass(body, draw(random, pace.liftS));
}

const holdS = (body: Body, known: Known, place: number): number =>
  known.board.settlesInS(place) +
  Math.max(draw(body.random, body.pace.deafHoldS), 5 / body.readingsPerS);
