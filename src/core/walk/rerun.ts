// Recomputes a walk from its inputs, without a screen: the same decisions in the same order as live.
import type { EventOf, WalkEvent } from '../events.js';
import type { Input } from '../inputs.js';
import { beginWalk, decide } from './decide.js';
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
