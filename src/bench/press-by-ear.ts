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
export function* pressByEar(body: Body, begun: EventOf<'press-begun'>): Gesture<void> {
  const place = body.profile.connector.pins.findIndex((known) => known.pin === begun.pin);
  if (place < 0) return;
  if (body.probing.pinIndex !== place) {
    if (body.probing.pinIndex !== null) yield* lift(body);
    yield* land(body, place);
  }
  // A hand that concentrates on one pin does not slip.
  body.slipAtS = null;
  if (begun.free === true) yield* pressAtWill(body, begun.places[0] ?? null);
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

/** Presses of someone who looks for the place where it answers. */
const pressesAtWill = 5;

/** Presses one place as often as it takes to believe it, marks each press, and ends the test. */
function* pressAtWill(body: Body, part: string | null): Gesture<void> {
  const { random, reach } = body;
  yield* pass(body, draw(random, [1.5, 3]));
  for (let n = 0; n < pressesAtWill; n += 1) {
    reach.act?.({ act: 'pressing' });
    body.probing = { ...body.probing, pressed: part };
    yield* pass(body, draw(random, [1, 2.5]));
    reach.act?.({ act: 'released' });
    body.probing = { ...body.probing, pressed: null };
    yield* pass(body, draw(random, [1, 3]));
  }
  reach.act?.({ act: 'dismiss' });
}
