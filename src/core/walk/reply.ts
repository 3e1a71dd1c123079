// Tells what the reply pads let hear, and carries out what was given.
import type { ActName } from '../inputs.js';
import type { PadCommand } from '../pads/pad.js';
import { type PadHeard, padStep } from '../pads/pad-listener.js';
import { touchUncertainty } from '../pads/touch-uncertainty.js';
import { touchToCapture } from './capture.js';
import { decideAct } from './decide-act.js';
import type { Teller } from './teller.js';

export const tellReplies = (teller: Teller): void => {
  const { pads, t } = teller.state;
  if (pads !== null) tell(teller, t, pads.heard);
};

/** A pin is about to be read: what was asked before counts now, and what reads like the pin is a reply no more. */
export const replyBeforePin = (teller: Teller): void => {
  const { pads, plan, t } = teller.state;
  if (pads === null) return;
  const captured = touchToCapture(teller.state);
  if (captured?.value === undefined) return;
  const { value, resolution, from } = captured;
  const u = touchUncertainty(value, resolution, plan.function);
  tell(teller, t, padStep(pads.listener, { kind: 'line', from, value, u }).heard);
};

const tell = (teller: Teller, t: number, heard: readonly PadHeard[]): void => {
  for (const { heard: what, command: reply } of heard) {
    teller.tell({ type: `reply-${what}`, t, reply });
    const act = what === 'given' ? acts[reply] : null;
    if (act !== null) decideAct(teller, t, { act, by: 'pad' });
  }
};

/** Null for what changes nothing in the walk. */
const acts: Readonly<Record<PadCommand, ActName | null>> = {
  open: 'open',
  back: 'back',
  next: 'next',
  skip: 'skip',
  'press-test': 'press',
  note: 'note',
  'repeat-cue': null,
};
