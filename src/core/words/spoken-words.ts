// What the program says aloud, for a person who never looks: short, without figures or signs that voices read
// differently. Pins arrive as they are to be spoken.
import type { EventOf, HoldReason, Question } from '../events.js';
import type { ActName, CueName, ProbeSide, ReadyStep } from '../inputs.js';
import type { PadCommand } from '../pads/pad.js';
import type { PressFinding } from '../press/decide-press.js';
import type { Lead } from '../suspects/priors.js';
import type { SpokenRework } from './rework-words.js';

export interface SpokenWords {
  /** A whole number from 0 to 999. */
  number(n: number): string;
  /** What a character of a pin's name that is neither letter nor digit is called. */
  readonly sign: Readonly<Record<string, string>>;
  /** A pin whose name cannot be spoken. */
  readonly somePin: string;
  /** `agreed` is false where the same pin is to be touched again. */
  judged(pin: string, verdict: string, agreed: boolean): string;
  question(question: Question, pin: string): string;
  readonly touchGround: string;
  /** Where a donor is walked beside the patient. */
  readonly donor: {
    readonly touchGround: string;
    readonly groundFirst: string;
    pin(board: 'donor' | 'patient', pin: string): string;
  };
  readonly readyAsked: Readonly<Record<ReadyStep, string>>;
  readonly leadZeroed: string;
  readonly leadZeroRefused: string;
  readonly referenceGood: string;
  readonly referenceBad: string;
  readonly groundFirst: string;
  readonly groundRepeated: string;
  readonly groundMissed: string;
  groundGood(pin: string): string;
  groundSkipped(pin: string): string;
  groundDoubted(opens: string): string;
  place(pin: string): string;
  readonly held: Readonly<Record<HoldReason, string>>;
  readonly freed: string;
  readonly paused: Readonly<Record<EventOf<'walk-paused'>['reason'], string>>;
  /** `pin` is empty where every pin has been walked. */
  continued(pin: string): string;
  readonly linkBack: string;
  readonly linkFailed: string;
  readonly readingsEnded: string;
  readonly meterError: string;
  readonly fileWritten: string;
  realigned(pin: string): string;
  finished(counts: readonly (readonly [count: string, verdict: string])[]): string;
  refused(reason: string): string;
  readonly act: Readonly<Record<ActName, string>>;
  /** A reply pad was touched twice; it was taken back; it is not listened to any more. */
  replyAsked(reply: PadCommand): string;
  replyCancelled(reply: PadCommand): string;
  replyShadowed(reply: PadCommand): string;
  readonly cue: Readonly<Record<CueName, string>>;
  /** The place to press next; null where no part is named. */
  pressPlace(place: string | null, sham: boolean): string;
  pressFinding(finding: PressFinding): string;
  /** Where to put the probe: on a pin once more, or at a place along a line. */
  probePlace(place: {
    readonly part: string | null;
    readonly side: ProbeSide;
    readonly pin: string | null;
  }): string;
  placeJudged(part: string | null, side: ProbeSide, verdict: string): string;
  placeOpen(part: string | null, side: ProbeSide): string;
  /** The probe is to be held on the pin; `free`: the technician presses at will. */
  pressBegun(pin: string, free: boolean): string;
  pressCompared(outcome: 'one' | 'tied' | 'all', parts: readonly string[]): string;
  /** `pin` is the one the walk goes on at, empty where there is none. */
  pressEnded(pin: string): string;
  /** While pressed at will: the line reads again, is open, reads something else. */
  readonly pressReads: string;
  readonly pressOpen: string;
  readonly pressOff: string;
  pressTraced(changes: string, rests: 'contact' | 'none' | null, repeats: boolean): string;
  /** A place is likelier at fault than all others together. */
  suspect(place: string): string;
  readonly checkLead: Readonly<Record<Lead, string>>;
  readonly rework: SpokenRework;
  /** Shown, not spoken: why the cues are not what was asked for. */
  readonly unable: {
    readonly noPlayer: string;
    readonly playerFailed: string;
    readonly noVoice: string;
    readonly voiceFailed: string;
  };
}
