// Recomputes a walk from its inputs, without a screen: the same decisions in the same order as live.
import type { EventOf, WalkEvent } from '../events.js';
import type { Input } from '../inputs.js';
import { beginWalk, decide } from './decide.js';
import { evolve } from './evolve.js';
import { inputOf } from './input-of.js';
import { openWalk } from './state.js';

/** The events of a walk opened as told and fed with the inputs, the opening among them. */
export function* rerun(
  opened: EventOf<'session-opened'>,
  inputs: Iterable<Input>,
): Generator<WalkEvent, void> {
  yield opened;
  let { state, events } = beginWalk(openWalk(opened));
  yield* events;
  for (const input of inputs) {
    ({ state, events } = decide(state, input));
    yield* events;
  }
}

/** The same for a stored session: its inputs are decided anew, its own decisions are left aside. */
export function* rerunSession(
  opened: EventOf<'session-opened'>,
  stored: Iterable<WalkEvent>,
): Generator<WalkEvent, void> {
  yield opened;
  let { state, events } = beginWalk(openWalk(opened));
  yield* events;
  for (const event of stored) {
    if (event.type === 'session-resumed') {
      state = evolve(state, event);
      yield event;
      continue;
    }
    const input = inputOf(event);
    if (input === null) continue;
    ({ state, events } = decide(state, input));
    yield* events;
  }
}
