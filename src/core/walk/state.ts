// Everything the walk knows, folded from its events and from nothing else.
import type { ShiftEstimate, Shifts } from '../context/estimate-shift.js';
import type { LeadZero } from '../context/lead-zero.js';
import type { ReadPin } from '../context/read-pin.js';
import type { Reason } from '../context/reasons.js';
import type { EventOf, HoldReason, Question } from '../events.js';
import type { LinkChange, ReadyStep } from '../inputs.js';
import type { PressStage } from '../press/press-stage.js';
import type { Plan } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { Reading } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';
import type { Evidence } from '../suspects/evidence.js';
import type { ExpectedBounds, NextAction } from '../verdict.js';
import type { Contact } from './contact.js';
import type { GapView } from './gap-likelihood.js';
import type { CalledBack } from './in-turns.js';
import type { Noise } from './noise.js';
import type { PadEar } from './pad-ear.js';
import type { PressAlone } from './press-alone.js';
import type { RangingDelay } from './ranging.js';
import type { Ready } from './ready-step.js';
import type { Alignment } from './ways.js';

export type Capture = EventOf<'touch-captured'>;

/** What is known of one pin. The last judgement counts. */
export interface PinRecord extends ReadPin {
  readonly confidence: number;
  readonly expected: ExpectedBounds;
  readonly agreed: boolean;
  readonly touch: number | null;
  /** What would help next, and what beside the reading had a part in the verdict. */
  readonly advice?: NextAction;
  readonly because?: readonly Reason[];
}

export type Accused = Pick<EventOf<'suspects-ranked'>['suspects'][number], 'where' | 'id'>;

export type WalkStage = 'ground-check' | 'walking' | 'finished' | 'closed';

export interface WalkState {
  readonly profile: Profile;
  readonly plan: Plan;
  readonly accuracy: AccuracyStatement;
  /** Two grounds are still to be touched before the walk. */
  readonly groundCheck: boolean;
  readonly stage: WalkStage;
  /** The step done with the leads just now, and those still to come. */
  readonly ready: Ready | null;
  readonly readyNext: readonly ReadyStep[];
  readonly reference: NonNullable<EventOf<'session-opened'>['reference']> | null;
  /** The resistance of the leads, taken off every resistance read. */
  readonly leads: LeadZero | null;
  /** Time of the latest event. */
  readonly t: number;
  readonly reading: Reading | null;
  readonly contact: Contact;
  readonly noise: Noise;
  readonly ranging: RangingDelay;
  /** How this meter reads beside what is expected, from the pins judged so far. */
  readonly shifts: ShiftEstimate;
  /** What of that was told. */
  readonly shiftsTold: Shifts;
  /** The coarsest display step that has stayed for good: the range is fixed there, not on its way. */
  readonly trustedStep: number;
  readonly alignment: Alignment;
  /** What the latest capture was aligned from, so that it can be aligned anew when its value is revised. */
  readonly latest: {
    readonly capture: number;
    readonly alignment: Alignment;
    readonly view: GapView;
    readonly called: CalledBack | null;
  } | null;
  /** Index of the pin the walk waits for; the number of pins when all are done. */
  readonly cursor: number;
  readonly reachedT: number;
  /** One record a pin, in walking order. */
  readonly pins: readonly PinRecord[];
  /** Captures whose pin is still in doubt or not yet told, oldest first. */
  readonly pending: readonly Capture[];
  /** The latest captures that were told, with the pin they were given. */
  readonly named: readonly { readonly capture: Capture; readonly index: number }[];
  readonly nextTouch: number;
  readonly question: {
    readonly question: Question;
    readonly pin: string;
    readonly t: number;
    /** How many touches had been captured by then. */
    readonly touch: number;
  } | null;
  /**
   * Calls back to a known place: those not followed since one was, and how often to the pin called last; and how often
   * "same or next?" was asked since that was known.
   */
  readonly calls: {
    readonly unfollowed: number;
    readonly pin: string;
    readonly times: number;
    readonly doubts: number;
  };
  /** A question was dismissed at this pin and is not asked again before the next touch. */
  readonly hushed: boolean;
  readonly hold: { readonly reason: HoldReason; readonly detail: string } | null;
  readonly paused: EventOf<'walk-paused'>['reason'] | null;
  /** Ground touches seen in the ground check. */
  readonly grounds: number;
  /** Asked for a second ground, the probe seemed to have slipped on the first. */
  readonly groundRepeated: boolean;
  /** Negative readings in a row. */
  readonly negatives: number;
  readonly opensInARow: number;
  readonly link: LinkChange | null;
  /** What is heard of the reply pads; null in a walk without any. */
  readonly pads: PadEar | null;
  readonly seed: number;
  readonly press: PressStage | null;
  /** The press test that ended last, as it ended. */
  readonly lastPress: { readonly stage: PressStage; readonly endedT: number } | null;
  /** What pressing found, in order. */
  readonly presses: readonly EventOf<'press-judged'>[];
  /** Places tested so far in the session. */
  readonly pressTests: number;
  /** The session is this press test and no walk; null in a walk. */
  readonly alone: PressAlone | null;
  /** Whether every line that is not normal is press-tested without being asked for. */
  readonly pressEach: boolean;
  /** Pins that are settled, not normal and still to be press-tested without being asked for, oldest first. */
  readonly pressDue: readonly string[];
  /** What an earlier session put in question; null in a walk of its own. */
  readonly recheck: NonNullable<EventOf<'session-opened'>['recheck']> | null;
  /** The outcome of the recheck, once it was told and while it still holds. */
  readonly recheckOutcome: EventOf<'recheck-compared'>['outcome'] | null;
  /** The place probed beside the walk, or null. */
  readonly probing: EventOf<'probe-begun'> | null;
  /** What was observed of the board, in the order in which it was. */
  readonly evidence: Evidence;
  /** What may be at fault, as told last. */
  readonly ranked: EventOf<'suspects-ranked'> | null;
  /** The likeliest suspect that was said last. */
  readonly accused: Accused | null;
  /** For each line the parts worth pressing, in order. */
  readonly partsOf: ReadonlyMap<string, readonly string[]>;
}
