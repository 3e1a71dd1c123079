// Recomputes a walk from its inputs, without a screen: the same decisions in the same order as live.
import type { EventOf, Numbered, WalkEvent } from '../events.js';
import { type Input, inputTime } from '../inputs.js';
import { beginWalk, decide } from './decide.js';
import { foldIfQuiet } from './decide-reading.js';
import { evolve } from './evolve.js';
import { inputOf } from './input-of.js';
import { openWalk } from './open-walk.js';
import type { WalkState } from './state.js';

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

/** A reading log's inputs, and that nothing comes after them. */
export function* toItsEnd(inputs: Iterable<Input>): Generator<Input, void> {
  let t = 0;
  for (const input of inputs) {
    t = inputTime(input);
    yield input;
  }
  yield { kind: 'link', t, change: 'ended' };
}

export interface Retold {
  readonly event: Numbered;
  /** After everything that was decided with the event. */
  readonly state: WalkState;
}

/**
 * The same, numbered, each event with the walk's state. Without `readings` they are counted but not told, and the
 * many that decide nothing cost no more than folding them.
 */
export function* retell(
  opened: EventOf<'session-opened'>,
  inputs: Iterable<Input>,
  { readings }: { readonly readings: boolean },
): Generator<Retold, void> {
  let seq = 0;
  let { state, events } = beginWalk(openWalk(opened));
  yield { event: { seq, ...opened }, state: openWalk(opened) };
  for (const event of events) yield { event: { seq: ++seq, ...event }, state };
  for (const input of inputs) {
    if (!readings && input.kind === 'reading') {
      const quiet = foldIfQuiet(state, input.reading);
      if (quiet !== null) {
        seq += 1;
        state = quiet;
        continue;
      }
    }
    ({ state, events } = decide(state, input));
    for (const event of events) {
      seq += 1;
      if (readings || event.type !== 'reading-taken') yield { event: { seq, ...event }, state };
    }
  }
}

/** A stored session decided anew: its inputs as they were, its own decisions left aside. */
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
