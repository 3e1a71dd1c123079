// What has been observed, in the order in which it was: verdicts at pins, readings at places along a line, and
// press findings.

import type { PressFinding } from '../press/decide-press.js';
import type { Verdict } from '../verdict.js';
import { tellingFindings, tellingVerdicts } from './channel.js';
import type { PinLook, PlaceLook, PressLook } from './views.js';

interface Circumstances {
  /** The ground clip sat on another ground than for the readings before. */
  readonly clipMoved?: boolean;
}

export type Observation = Circumstances &
  (
    | (PinLook & { readonly verdict: Verdict })
    | (PlaceLook & { readonly verdict: Verdict })
    | (PressLook & { readonly finding: PressFinding })
  );
export type Evidence = readonly Observation[];

/** False for what says nothing about any fault: `unsure`, `unread`, `inconclusive`. */
export const isTelling = (observation: Observation): boolean =>
  observation.kind === 'press'
    ? tellingFindings.some((finding) => finding === observation.finding)
    : tellingVerdicts.some((verdict) => verdict === observation.verdict);
