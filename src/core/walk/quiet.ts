// Most readings decide nothing: the probe rests on what was captured, hangs in the air, or lands. This tells so at
// little cost, so that a session of a million readings is folded quickly. It may be wrong in one way only: to
// call for a look where nothing is to be decided.
import type { Reading } from '../reading.js';
import { isWorthALook, wasHeld } from './capture.js';
import { mayBeFrozen } from './hold.js';
import { isTimeToAsk } from './question.js';
import { isWatched } from './rest.js';
import { shownBy } from './shown.js';
import type { WalkState } from './state.js';
import { isPlain } from './usable.js';

/** @param state with the reading folded in already. */
export const isQuiet = (state: WalkState, reading: Reading): boolean => {
  const { contact, hold, negatives, pads, paused, plan, press, question, stage } = state;
  if (pads !== null && pads.heard.length > 0) return false;
  if (press !== null || state.ready !== null || hold !== null) return false;
  if (paused !== null) return paused !== 'meter-silent';
  if (state.alone !== null) return stage !== 'walking';
  const { rest, touch } = contact;
  if (stage === 'closed') return true;
  if (stage === 'finished' && state.probing === null) return rest === null || !isWatched(rest);
  const shown = shownBy(reading);
  if (shown.blank !== undefined || shown.fault !== undefined) return true;
  if (negatives > 0 || !isPlain(plan, shown)) return false;
  if (touch !== null) return !isWorthALook(state);
  if (rest !== null) return !isWatched(rest) && !mayBeFrozen(rest);
  if (wasHeld(state)) return false;
  return question?.question === 'open' ? contact.ended.length < 2 : !isTimeToAsk(state);
};
