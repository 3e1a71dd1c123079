// Stops the judging while the meter shows something that must not be judged, says why, and frees the walk as
// soon as that is over.
import type { HoldReason } from '../events.js';
import { isBlank, isFault, type Reading } from '../reading.js';
import type { Rest } from './rest.js';
import type { WalkState } from './state.js';
import type { Teller } from './teller.js';
import { type Unusable, unusable } from './usable.js';

/** Two negative readings in a row are no glitch. */
const negativesThatCount = 2;
/** A display that repeats one number to the last digit for so long may be held. Common practice, no source. */
const frozenAfterS = 8;
const frozenReadings = 12;

/** The display has repeated itself so often that it is worth a look whether it does so for long. */
export const mayBeFrozen = ({ equal }: Rest): boolean => equal >= frozenReadings;

/** Returns true while the walk is held. */
export const holdOrFree = (teller: Teller, reading: Reading): boolean => {
  const { state } = teller;
  // A blank or garbled line says nothing about whether the reason is gone.
  if (isFault(reading) || isBlank(reading)) return state.hold !== null;
  const found = reasonToHold(state, reading);
  const { hold } = state;
  if (hold !== null && hold.reason !== found?.reason) {
    teller.tell({ type: 'walk-freed', t: reading.t, reason: hold.reason });
  }
  if (found !== null && hold?.reason !== found.reason) {
    teller.tell({ type: 'walk-held', t: reading.t, reason: found.reason, detail: found.detail });
  }
  return found !== null;
};

const reasonToHold = (state: WalkState, reading: Reading): Unusable | null => {
  const held = unusable(state.plan, reading);
  if (held !== null) return held;
  if (state.negatives >= negativesThatCount) {
    return because(
      'negative',
      'the reading is negative: residual charge; discharge the line, then touch again',
    );
  }
  const { rest, clock } = state.contact;
  if (rest !== null && rest.equal >= frozenReadings && rest.equal * clock.periodS >= frozenAfterS) {
    return because('frozen-display', 'the display repeats one number: is hold on at the meter?');
  }
  return null;
};

const because = (reason: HoldReason, detail: string): Unusable => ({ reason, detail });
