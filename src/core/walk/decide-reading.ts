// What the walk does about one reading.
import type { WalkEvent } from '../events.js';
import { isOverload, isValue, type Reading } from '../reading.js';
import { beginAlone } from './begin-alone.js';
import { captureIfSettled, captureLeft } from './capture.js';
import { continueWalk } from './continue-walk.js';
import type { Decision } from './decide.js';
import { evolve } from './evolve.js';
import { holdOrFree } from './hold.js';
import { stepPress } from './press.js';
import { pressEachBadLine } from './press-each.js';
import { answerByTaps, askIfOpen } from './question.js';
import { isQuiet } from './quiet.js';
import { stepReady } from './ready.js';
import { replyBeforePin, tellReplies } from './reply.js';
import type { WalkState } from './state.js';
import { takeReading } from './take-reading.js';
import { tellRecheck } from './tell-recheck.js';
import { tellSuspectsAnew } from './tell-suspects.js';
import { createTeller, type Teller } from './teller.js';

export const decideReading = (state: WalkState, reading: Reading): Decision => {
  const taken: WalkEvent = { type: 'reading-taken', ...reading };
  const after = evolve(state, taken);
  if (isQuiet(after, reading)) return { state: after, events: [taken] };
  const teller = createTeller(after, taken);
  lookAt(teller, reading, state);
  tellSuspectsAnew(teller);
  tellRecheck(teller, reading.t, false);
  return teller;
};

/** The state after a reading that decides nothing; null where it must be looked at. */
export const foldIfQuiet = (state: WalkState, reading: Reading): WalkState | null => {
  const after = takeReading(state, reading);
  return isQuiet(after, reading) ? after : null;
};

const lookAt = (teller: Teller, reading: Reading, before: WalkState): void => {
  if (teller.state.paused === 'meter-silent') continueWalk(teller, reading.t);
  if (teller.state.paused !== null || teller.state.stage === 'closed') return;
  if (teller.state.alone !== null && teller.state.press === null) {
    beginAlone(teller, reading.t);
    return;
  }
  if (teller.state.press !== null) {
    stepPress(teller);
    pressEachBadLine(teller, reading.t);
    return;
  }
  if (teller.state.ready !== null) {
    if (!holdOrFree(teller, reading)) stepReady(teller, reading.t);
    return;
  }
  tellReplies(teller);
  if (teller.state.press !== null || holdOrFree(teller, reading)) return;
  if (isValue(reading)) {
    replyBeforePin(teller);
    if (teller.state.press === null) captureIfSettled(teller);
  }
  if (isOverload(reading)) {
    captureLeft(teller, before);
    answerByTaps(teller);
    askIfOpen(teller);
  }
  pressEachBadLine(teller, reading.t);
};
