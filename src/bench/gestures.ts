// What a probe does on its way to a pin, on it and off it again, with the mishaps of the pace. Each gesture
// leaves the hands in a known state; none decides where to go.
import type { Numbered } from '../core/events.js';
import { type Body, type Gesture, listen, pass } from './body.js';
import type { Along } from './line-path.js';
import { draw } from './pace.js';
import { isOtherBoard } from './two-boards.js';

/** Puts the probe on the pin: perhaps beside it first, always with bounces, and plans a slip or none. */
export function* land(body: Body, pinIndex: number): Gesture<void> {
  const { random, pace } = body;
  if (body.over !== null && isOtherBoard(body.profile, body.over, pinIndex)) {
    yield* pass(body, draw(random, pace.overS));
  }
  body.over = pinIndex;
  if (random.chance(pace.neighbourChance)) {
    const neighbour = beside(body, pinIndex);
    touch(body, neighbour);
    yield* pass(body, draw(random, pace.neighbourS));
    touch(body, null);
    yield* pass(body, draw(random, pace.stepOverS));
  }
  if (pace.fumbleChance > 0) yield* fumble(body, pinIndex);
  yield* settleOn(body, pinIndex);
  body.slipAtS = random.chance(pace.slipChance) ? body.nowS + draw(random, pace.slipAfterS) : null;
}

/** Touches in passing, each followed by a lift, before the probe has found its place. */
function* fumble(body: Body, pinIndex: number): Gesture<void> {
  const { random, pace } = body;
  for (let left = 2; left > 0 && random.chance(pace.fumbleChance); left -= 1) {
    yield* settleOn(body, pinIndex);
    yield* pass(body, draw(random, pace.fumbleS));
    touch(body, null);
    yield* pass(body, draw(random, pace.liftS));
  }
}

/** Puts the probe on a place along the line of a pin, or on the pin itself, with a hand that takes its time. */
export function* landAlong(body: Body, pinIndex: number, along: Along | null): Gesture<void> {
  body.probing = { ...body.probing, pinIndex, along };
  body.slipAtS = null;
  yield* pass(body, 0);
}

/** Keeps the probe where it is until something is heard (returned) or until `untilS` (null). */
export function* hold(body: Body, untilS: number): Gesture<Numbered | null> {
  while (body.slipAtS !== null && body.slipAtS < untilS) {
    const heard = yield* listen(body, body.slipAtS);
    if (heard !== null) return heard;
    yield* slip(body);
  }
  return yield* listen(body, untilS);
}

/** Holds for so long whatever is said. */
export function* keepStill(body: Body, seconds: number): Gesture<void> {
  const untilS = body.nowS + seconds;
  while (body.slipAtS !== null && body.slipAtS < untilS) {
    yield* pass(body, body.slipAtS - body.nowS);
    yield* slip(body);
  }
  yield* pass(body, Math.max(0, untilS - body.nowS));
}

/** The time it takes to act on what was heard. */
export function* react(body: Body): Gesture<void> {
  yield* keepStill(body, draw(body.random, body.pace.reactionS));
}

/** Takes the probe off and brings it over the next place. */
export function* lift(body: Body): Gesture<void> {
  const { random, pace } = body;
  touch(body, null);
  body.slipAtS = null;
  yield* pass(body, draw(random, pace.liftS));
  if (random.chance(pace.huntChance)) yield* pass(body, draw(random, pace.huntS));
}

/** Two short touches on a ground that is known to read: the answer "open" given with the probe. */
export function* tapGroundTwice(body: Body): Gesture<void> {
  const { random, pace, readingsPerS } = body;
  const ground = body.goodGrounds[0] ?? groundPlaces(body)[0];
  if (ground === undefined) return;
  touch(body, null);
  body.slipAtS = null;
  yield* pass(body, draw(random, pace.liftS));
  for (const last of [false, true]) {
    yield* settleOn(body, ground);
    yield* untilShown(body, longestLookS);
    yield* pass(body, Math.max(tapReadings / readingsPerS, draw(random, pace.tapS)));
    touch(body, null);
    if (!last) yield* pass(body, Math.max(gapReadings / readingsPerS, draw(random, pace.tapS)));
  }
}

/** Keeps the probe on until the display shows a number, as after a range change, or gives up. */
export function* untilShown(body: Body, atMostS: number): Gesture<void> {
  const giveUpS = body.nowS + atMostS;
  while (!body.reach.showsValue() && body.nowS < giveUpS) yield* keepStill(body, glanceS);
}

const glanceS = 0.05;
/** A display that shows nothing for so long on a known ground will not. */
const longestLookS = 4;

/** A tap and the gap between two must show on slow meters as well. */
const tapReadings = 2.5;
const gapReadings = 2;

/** Places of the ground pins in walking order. */
export const groundPlaces = (body: Body): number[] =>
  body.profile.connector.pins.flatMap(({ line }, index) =>
    body.profile.lines[line]?.kind === 'ground' ? [index] : [],
  );

function* slip(body: Body): Gesture<void> {
  const at = body.probing.pinIndex;
  body.slipAtS = null;
  touch(body, null);
  yield* pass(body, draw(body.random, body.pace.slipS));
  if (at !== null) yield* settleOn(body, at);
}

/** Puts the probe on a place, with its bounces. */
export function* settleOn(body: Body, pinIndex: number): Gesture<void> {
  const { random, pace } = body;
  touch(body, pinIndex);
  for (let left = random.below(pace.bounces + 1); left > 0; left -= 1) {
    yield* pass(body, draw(random, pace.bounceS));
    touch(body, null);
    yield* pass(body, draw(random, pace.bounceS));
    touch(body, pinIndex);
  }
}

const touch = (body: Body, pinIndex: number | null): void => {
  body.probing = { ...body.probing, pinIndex, along: null };
};

/** The pin before or after; at an end of the walk, the one there is. */
const beside = (body: Body, pinIndex: number): number => {
  const last = body.profile.connector.pins.length - 1;
  // With two boards on the bench the neighbour on the same one is two places away.
  const step = isOtherBoard(body.profile, 0, 1) ? 2 : 1;
  const side = pinIndex + (body.random.chance(0.5) ? step : -step);
  return side < 0
    ? Math.min(pinIndex + step, last)
    : side > last
      ? Math.max(0, pinIndex - step)
      : side;
};
