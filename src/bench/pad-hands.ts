// What the hands do with the reply pads: the double touch that gives a command without letting go of a probe, and
// touching each in turn so that the program learns them.
import type { PadCommand } from '../core/pads/pad.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { settleOn, untilShown } from './gestures.js';
import { draw } from './pace.js';

/** Place of the pad after the pins, or null where there is none. */
const placeOf = (body: Body, command: PadCommand): number | null => {
  const at = body.pads.findIndex((pad) => pad.command === command);
  return at < 0 ? null : body.profile.connector.pins.length + at;
};

/** A tap and the gap between two must show on slow meters as well. */
const tapReadings = 3;
const gapReadings = 2;
/** Who is not heard says it once more, and then goes on without. */
const tries = 2;
/** A display that shows nothing for so long on a pad will not. */
const longestLookS = 4;

/**
 * Two touches on the pad of a command, from wherever the probe is; then back over the board, in the air.
 * @returns false where there is no such pad, or the program did not echo it.
 */
export function* giveByPad(body: Body, command: PadCommand): Gesture<boolean> {
  const place = placeOf(body, command);
  if (place === null) return false;
  for (let left = tries; left > 0; left -= 1) {
    yield* leave(body);
    yield* tap(body, place);
    const { pace, random, readingsPerS } = body;
    yield* pass(body, Math.max(gapReadings / readingsPerS, draw(random, pace.padGapS)));
    yield* tap(body, place);
    if (yield* echoOf(body, command)) return true;
  }
  return false;
}

/** Goes from pad to pad, as often as the program must hear each: it is touched until its reading has stood. */
export function* touchPadsInTurn(body: Body): Gesture<void> {
  yield* pass(body, 1.5);
  for (const { command } of body.pads) {
    const place = placeOf(body, command);
    if (place === null) continue;
    yield* settleOn(body, place);
    yield* untilShown(body, longestLookS);
    yield* pass(body, Math.max(6 / body.readingsPerS, draw(body.random, body.pace.deafHoldS)));
    yield* leave(body);
  }
}

function* leave(body: Body): Gesture<void> {
  body.probing = { ...body.probing, pinIndex: null };
  body.slipAtS = null;
  yield* pass(
    body,
    Math.max(gapReadings / body.readingsPerS, draw(body.random, body.pace.padTravelS)),
  );
}

function* tap(body: Body, place: number): Gesture<void> {
  const { pace, random, readingsPerS } = body;
  yield* settleOn(body, place);
  yield* untilShown(body, longestLookS);
  yield* pass(body, Math.max(tapReadings / readingsPerS, draw(random, pace.padTapS)));
  body.probing = { ...body.probing, pinIndex: null };
}

/** What was said before the echo is no news any more; what comes with it and after it is. */
function* echoOf(body: Body, command: PadCommand): Gesture<boolean> {
  const untilS = body.nowS + Math.max(1, 4 / body.readingsPerS);
  for (
    let heard = yield* listen(body, untilS);
    heard !== null;
    heard = yield* listen(body, untilS)
  ) {
    if (heard.type !== 'reply-asked' || heard.reply !== command) continue;
    yield* pass(body, Math.max(2 / body.readingsPerS, draw(body.random, body.pace.padTravelS)));
    return true;
  }
  return false;
}
