// What the technician who hears does when the program stops or pauses: removes the cause, or waits for it to pass, and
// touches the pin again.
import type { EventOf, HoldReason } from '../core/events.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { keepStill, land, lift, react } from './gestures.js';

/** Removes what the program stops for, then touches the pin again. */
export function* setRight(body: Body, place: number, reason: HoldReason): Gesture<void> {
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

export function* waitInTheAir(
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
