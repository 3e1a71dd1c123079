// The two separate grounds that every walk begins with. A ground that shows no value is passed over: it may be
// a torn joint. Gives up after the last one, with the probe in the air.
import { type Body, type Gesture, pass } from './body.js';
import { groundPlaces, hold, keepStill, land, lift, react, untilShown } from './gestures.js';
import { draw } from './pace.js';

/** With the program's word for each touch; moves on as soon as it comes, and stops when enough is said. */
export function* checkGroundsByEar(body: Body): Gesture<void> {
  for (const place of groundPlaces(body)) {
    yield* land(body, place);
    const word = yield* heardOf(body, place);
    if (word !== 'nothing') yield* react(body);
    yield* lift(body);
    if (word === 'hasty') yield* pass(body, clearLiftS);
    if (word === 'enough') return;
  }
}

/** Nobody takes a lift of so long for a slip. */
const clearLiftS = 1;

function* heardOf(body: Body, place: number): Gesture<'touched' | 'hasty' | 'enough' | 'nothing'> {
  const untilS = body.nowS + Math.max(3, 8 / body.readingsPerS);
  let touched = false;
  for (let heard = yield* hold(body, untilS); heard !== null; heard = yield* hold(body, untilS)) {
    if (heard.type === 'ground-checked') return 'enough';
    if (heard.type === 'ground-repeated') return 'hasty';
    if (heard.type !== 'ground-touched') continue;
    touched = true;
    body.goodGrounds = [...body.goodGrounds, place];
    if (body.inbox.length === 0 && heard.which === 1) return 'touched';
  }
  return touched ? 'touched' : 'nothing';
}

/** Without hearing: each ground is held until its reading has stood for a while. */
export function* checkGroundsByPatience(body: Body): Gesture<void> {
  for (const place of groundPlaces(body)) {
    if (body.goodGrounds.length >= 2) return;
    yield* land(body, place);
    yield* untilShown(body, 4);
    yield* keepStill(body, Math.max(4 / body.readingsPerS, draw(body.random, body.pace.deafHoldS)));
    if (body.reach.showsValue()) body.goodGrounds = [...body.goodGrounds, place];
    yield* lift(body);
  }
}
