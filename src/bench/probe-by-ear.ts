// The technician who probes beside the walk: asks for what the program proposes, puts the probe there, and answers
// where nothing is read.
import type { EventOf, Numbered } from '../core/events.js';
import type { AnswerWay } from './bench-name.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import { landAlong, lift, react, tapGroundTwice } from './gestures.js';
import { draw } from './pace.js';

/** The key for the proposed probe, a moment after the last word. */
export function* askToProbe(body: Body): Gesture<void> {
  yield* pass(body, draw(body.random, body.pace.reactionS));
  body.reach.act?.({ act: 'probe' });
}

/** Goes to the place and stays with it until the program has taken its reading or given up. */
export function* probeByEar(
  body: Body,
  begun: EventOf<'probe-begun'>,
  answers: AnswerWay,
): Gesture<void> {
  yield* react(body);
  yield* lift(body);
  yield* goThere(body, begun);
  for (;;) {
    const heard: Numbered | null = yield* listen(body, body.nowS + body.pace.patienceS);
    if (heard?.type === 'probe-ended') break;
    if (heard === null) {
      yield* lift(body);
      yield* goThere(body, begun);
    } else if (heard.type === 'question-asked') {
      yield* pass(body, draw(body.random, body.pace.sureS));
      if (answers === 'key' && body.reach.act !== undefined) body.reach.act({ act: 'open' });
      else {
        yield* tapGroundTwice(body);
        yield* goThere(body, begun);
      }
    }
  }
  yield* react(body);
  yield* lift(body);
}

function* goThere(body: Body, begun: EventOf<'probe-begun'>): Gesture<void> {
  const { line, pin, part = null, side } = begun;
  const at = body.profile.connector.pins.findIndex((known) =>
    pin === undefined ? known.line === line : known.pin === pin,
  );
  if (at < 0) return;
  yield* landAlong(body, at, side === undefined ? null : { part, side });
}
