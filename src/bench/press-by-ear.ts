// The technician in a press test: keeps the probe on the pin with one hand, and with the other presses and lets
// go as the program says, a reaction late.
import type { EventOf, Numbered } from '../core/events.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { land, lift } from './gestures.js';
import { draw } from './pace.js';

/** Is a press test announced that has not been heard yet? */
export const pressAnnounced = (body: Body): boolean =>
  body.inbox.some(({ type }) => type === 'press-begun');

export const isPressBegun = (event: Numbered): event is { seq: number } & EventOf<'press-begun'> =>
  event.type === 'press-begun';

/** Stays until the program says that the test has ended, then takes the probe off. */
export function* pressByEar(body: Body, pin: string): Gesture<void> {
  const place = body.profile.connector.pins.findIndex((known) => known.pin === pin);
  if (place < 0) return;
  if (body.probing.pinIndex !== place) {
    if (body.probing.pinIndex !== null) yield* lift(body);
    yield* land(body, place);
  }
  // A hand that concentrates on one pin does not slip.
  body.slipAtS = null;
  for (;;) {
    const heard = yield* listen(body, Number.POSITIVE_INFINITY);
    if (heard?.type === 'press-ended') break;
    if (heard?.type !== 'cue-given') continue;
    yield* pass(body, draw(body.random, body.pace.reactionS));
    const pressed = heard.cue === 'press' ? (heard.place ?? null) : null;
    body.probing = { ...body.probing, pressed };
  }
  body.probing = { ...body.probing, pressed: null };
  yield* lift(body);
}
