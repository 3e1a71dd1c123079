// What one reading changes in the walk's state. Runs for every reading there is, so it does no more than it must.

import { inferResolution } from '../measure/accuracy-row.js';
import { takeInPress } from '../press/press-stage.js';
import type { Reading } from '../reading.js';
import { seeBlank, seeNothing, seeOverload, seeSame, seeValue } from './contact.js';
import { noiseAt } from './noise.js';
import { listen } from './pad-ear.js';
import { seeAlone } from './press-alone.js';
import { seeReady } from './ready-step.js';
import { surelyAlike } from './rest.js';
import { shownBy } from './shown.js';
import type { WalkState } from './state.js';
import { contactFloor, isPlain, isResidualCharge, unusable } from './usable.js';
import { laidOutLike, withReading } from './with-reading.js';

export const takeReading = (state: WalkState, reading: Reading): WalkState => {
  const seen = seeReading(state, reading);
  return state.pads === null ? seen : laidOutLike(state, listen(state, seen, reading));
};

const seeReading = (state: WalkState, reading: Reading): WalkState => {
  const { contact, plan, press, negatives } = state;
  const { t } = reading;
  if (press !== null) {
    const taken = takeInPress(press, { kind: 'reading', reading });
    return laidOutLike(state, { ...state, t, reading, press: taken });
  }
  if (state.alone !== null) {
    return laidOutLike(state, { ...state, t, reading, alone: seeAlone(state.alone, reading) });
  }
  if (state.ready !== null && state.paused === null) {
    const ready = seeReady(state.ready, plan, reading);
    return laidOutLike(state, { ...state, t, reading, ready, contact: seeNothing(contact, t) });
  }
  // When all is walked nothing is waited for: what the probe touches then is looked at afresh once something is.
  const idle = state.stage === 'finished' && contact.rest === null && state.probing === null;
  if (state.paused !== null || idle) return withReading(state, reading, contact, negatives);
  const shown = shownBy(reading);
  if (shown.blank !== undefined) {
    return withReading(state, reading, seeBlank(contact, t), negatives);
  }
  if (!isPlain(plan, shown) && (shown.fault !== undefined || unusable(plan, reading) !== null)) {
    return withReading(state, reading, seeNothing(contact, t), negatives);
  }
  const value = shown.value === undefined ? undefined : shown.value - (state.leads?.ohms ?? 0);
  const openLimit = plan.pins[state.cursor]?.openLimit ?? null;
  if (value === undefined || (openLimit !== null && value >= openLimit)) {
    return withReading(state, reading, seeOverload(contact, t), 0);
  }
  const { rest } = contact;
  if (rest !== null && value > 0 && surelyAlike(value, rest.level)) {
    return withReading(state, reading, seeSame(contact, rest, t, value), 0);
  }
  const { range } = shown;
  const resolution =
    shown.resolution ?? inferResolution(state.accuracy, plan.function, value, range);
  if (isResidualCharge(plan.function, value, resolution)) {
    return withReading(state, reading, seeNothing(contact, t), negatives + 1);
  }
  const floor = Math.max(contactFloor(plan.function), 3 * resolution);
  const scale = { noise: noiseAt(state.noise, value, resolution), floor };
  return withReading(state, reading, seeValue(contact, t, value, shown, scale), 0);
};
