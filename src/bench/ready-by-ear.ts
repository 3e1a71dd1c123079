// What the technician does with the leads before the first ground: holds the tips together, or both ends of the
// reference, until the program has said what it makes of it. Gives up a step that is refused again and again.
import type { EventOf, WalkEvent } from '../core/events.js';
import type { ReadyStep } from '../core/inputs.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { draw } from './pace.js';

const mostTries = 3;
const patienceS = 8;

export function* readyByEar(body: Body, opened: EventOf<'session-opened'>): Gesture<void> {
  for (const step of opened.ready ?? []) {
    yield* untilAsked(body, step);
    let good = false;
    for (let tries = 0; !good && tries < mostTries; tries += 1) {
      yield* pass(body, draw(body.random, body.pace.reactionS));
      const loose = step === 'lead-zero' ? 0 : (opened.reference?.value ?? null);
      body.probing = { ...body.probing, loose };
      good = (yield* isTaken(body)) === true;
      yield* pass(body, draw(body.random, body.pace.reactionS));
      body.probing = { ...body.probing, loose: null };
      yield* pass(body, draw(body.random, body.pace.liftS));
    }
    if (!good) body.reach.act?.({ act: 'skip' });
  }
}

const untilAsked = (body: Body, step: ReadyStep): Gesture<unknown> =>
  hear(body, (heard) => (heard.type === 'ready-asked' && heard.step === step) || null);

const isTaken = (body: Body): Gesture<boolean | null> =>
  hear(body, (heard) => {
    if (heard.type === 'lead-zeroed') return true;
    if (heard.type === 'lead-zero-refused') return false;
    return heard.type === 'reference-checked' ? heard.outcome.ok : null;
  });

/** What the first event says that says anything, or null where none does before patience ends. */
function* hear<T>(body: Body, says: (heard: WalkEvent) => T | null): Gesture<T | null> {
  const untilS = body.nowS + patienceS;
  for (
    let heard = yield* listen(body, untilS);
    heard !== null;
    heard = yield* listen(body, untilS)
  ) {
    const said = says(heard);
    if (said !== null) return said;
  }
  return null;
}
