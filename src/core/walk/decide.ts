// What the walk does about one input. Pure: the same state and input give the same events, live and in a
// rerun. Nothing here remembers anything; all memory is in the state, and evolve alone changes it.
import type { WalkEvent } from '../events.js';
import type { Input, LinkChange } from '../inputs.js';
import { continueWalk } from './continue-walk.js';
import { decideAct } from './decide-act.js';
import { decideReading } from './decide-reading.js';
import { goOnReady } from './ready.js';
import type { WalkState } from './state.js';
import { tellCaptures, tellPlace } from './tell.js';
import { tellSuspectsAnew } from './tell-suspects.js';
import { createTeller, type Teller } from './teller.js';

export interface Decision {
  readonly state: WalkState;
  readonly events: readonly WalkEvent[];
}

export const decide = (state: WalkState, input: Input): Decision => {
  if (input.kind === 'reading') return decideReading(state, input.reading);
  const teller = createTeller(state);
  switch (input.kind) {
    case 'act':
      decideAct(teller, input.t, input.act);
      tellSuspectsAnew(teller);
      break;
    case 'cue':
      teller.tell({ type: 'cue-given', t: input.t, cue: input.cue });
      break;
    case 'link':
      decideLink(teller, input.t, input.change, input.detail);
      break;
    case 'file':
      decideFile(teller, input);
      break;
    case 'meter':
      teller.tell({ type: 'meter-spoke', t: input.t, says: input.says, text: input.text });
      break;
  }
  return teller;
};

/** The first word of a walk: which pin it begins with, when nothing comes before. */
export const beginWalk = (state: WalkState): Decision => {
  const teller = createTeller(state);
  const { alone, ready, readyNext, stage, t } = state;
  if (ready !== null) teller.tell({ type: 'ready-asked', t, step: ready.step });
  else if (readyNext.length > 0) goOnReady(teller, t);
  else if (stage === 'walking' && alone === null) tellPlace(teller, t, true);
  return teller;
};

const decideLink = (
  teller: Teller,
  t: number,
  change: LinkChange,
  detail: string | undefined,
): void => {
  teller.tell({ type: 'link-changed', t, change, ...(detail === undefined ? {} : { detail }) });
  const { paused } = teller.state;
  switch (change) {
    case 'lost':
      if (paused === null || paused === 'meter-silent') {
        teller.tell({ type: 'walk-paused', t, reason: 'link-lost' });
      }
      break;
    case 'silent':
      if (paused === null) teller.tell({ type: 'walk-paused', t, reason: 'meter-silent' });
      break;
    case 'returned':
      if (paused === 'link-lost') continueWalk(teller, t);
      break;
    case 'ended':
      if (teller.state.stage !== 'walking') break;
      tellCaptures(teller, t, 'fits-better');
      tellPlace(teller, t, false);
      break;
    case 'opened':
    case 'failed':
      break;
  }
};

const decideFile = (
  teller: Teller,
  { t, change, detail }: Extract<Input, { kind: 'file' }>,
): void => {
  teller.tell({ type: 'file-changed', t, change, detail });
  const { paused } = teller.state;
  if (change === 'blocked' && paused === null) {
    teller.tell({ type: 'walk-paused', t, reason: 'file-blocked' });
  }
  if (change === 'writable' && paused === 'file-blocked') continueWalk(teller, t);
};
