// Where a conversation with a meter that answers stands.
import type { Reading } from '../../reading.js';
import type { Asked, MeterDecoder } from '../driver-decoder.js';
import type { ShownFunction } from '../shown-function.js';
import { type Pace, unknownPace } from './answer-pace.js';
import type { DialogueEffect, DialogueEvent } from './dialogue-types.js';
import type { Script, Step } from './script.js';

export interface AskedSetting {
  readonly script: Script;
  readonly decoder: MeterDecoder;
  readonly asked: Asked;
}

/**
 * `recover`: a marker question, whose answer proves that nothing earlier is still on its way. `clear`: nothing is
 * asked until no answer can come any more, where the meter has no marker question.
 */
export type Job = 'set-up' | 'read' | 'recover' | 'clear' | 'keep-awake';

export type Phase =
  | { readonly at: 'closed' }
  /** Just opened: what is still on its way from before is let run out. */
  | { readonly at: 'listening'; readonly until: number; readonly latest: number }
  | {
      readonly at: 'asking';
      readonly job: Job;
      readonly step: Step;
      readonly rest: readonly Step[];
      readonly since: number;
      readonly until: number;
      /** An answer that comes later is not taken. */
      readonly answerBy: number;
      /** The reading should have come by now: the marker question was asked after it. */
      readonly overdue: boolean;
    }
  /** Everything that comes is thrown away until all answers are in, or none can come any more. */
  | {
      readonly at: 'clearing';
      readonly until: number;
      readonly latest: number;
      readonly heard: number;
    }
  | { readonly at: 'pausing'; readonly until: number; readonly job: Job };

export interface AskedState {
  readonly phase: Phase;
  /** Questions in a row without an answer. */
  readonly unanswered: number;
  /** Readings asked for in a row without one. */
  readonly missedReads: number;
  /** Answers that may still be on their way: while there are any, no frame is a reading. */
  readonly outstanding: number;
  /** When the latest question was asked whose answer might be taken for a reading. */
  readonly askedAt: number;
  /** When the marker questions were asked that may yet be answered, oldest first. */
  readonly owed: readonly number[];
  readonly pace: Pace;
  /** Readings in a row of which the marker question showed that they will not come. */
  readonly lostReads: number;
  /** The meter may have forgotten its set-up: it was silent, and was not set up since it answers again. */
  readonly setUpDue: boolean;
  /** What is known of the marker question: a meter that has answered it once will again. */
  readonly marker: 'untried' | 'answered' | 'unanswered';
  /** Frames that came when nobody waited for them, since the last reading. */
  readonly strays: number;
  readonly silent: boolean;
  readonly faults: number;
  readonly identity: string | undefined;
  /** Errors told since the opening or the last gap in the readings, so that each is told once. */
  readonly told: readonly string[];
  /** Entries of the error queue read in this job. */
  readonly entries: number;
  /** What the meter says it measures; null where it was not asked or gives no answer. */
  readonly shown: ShownFunction | null;
  readonly functionDueAt: number;
  /** Function queries in a row without an answer. */
  readonly functionMissed: number;
  /** The latest reading that was one. */
  readonly last: Reading | null;
  readonly readDueAt: number;
  readonly awakeDueAt: number;
}

export const askedStart: AskedState = {
  phase: { at: 'closed' },
  unanswered: 0,
  missedReads: 0,
  outstanding: 0,
  askedAt: Number.NEGATIVE_INFINITY,
  owed: [],
  pace: unknownPace,
  lostReads: 0,
  setUpDue: false,
  marker: 'untried',
  strays: 0,
  silent: false,
  faults: 0,
  identity: undefined,
  told: [],
  entries: 0,
  shown: null,
  functionDueAt: 0,
  functionMissed: 0,
  last: null,
  readDueAt: 0,
  awakeDueAt: Number.POSITIVE_INFINITY,
};

/** The line must be quiet this long before the first question, and after whatever nobody asked for. */
export const quietS = 0.15;
/** What needs no measuring is answered at once, or not at all: after a gap or a lost reading the next question is soon due. */
export const quickWithinS = 1;
/** In time-outs: an answer that is later than this is no longer reckoned with. */
export const latestAnswer = 2;

/** Whether a question of this meter's shows what is still on its way. */
export const canRecover = ({ script }: AskedSetting, { marker }: AskedState): boolean =>
  script.marker !== undefined && marker !== 'unanswered';

export type Asking = Extract<Phase, { at: 'asking' }>;
export type Heard = Extract<DialogueEvent, { event: 'frame' }>;

/** Where a turn leads: a new job, the rest of a job, a job after a pause, or nowhere until the world acts. */
export type Onward =
  | { readonly go: 'job'; readonly job: Job }
  | { readonly go: 'rest'; readonly job: Job; readonly steps: readonly Step[] }
  | { readonly go: 'pause'; readonly until: number; readonly job: Job }
  | { readonly go: 'wait' };

export interface Turn {
  readonly state: AskedState;
  readonly effects: readonly DialogueEffect[];
  readonly onward: Onward;
}

/** A frame that is no answer is passed over; `count` is 0 for one that is known not to be one, as an echo. */
export const stray = (state: AskedState, count: number): Turn => ({
  state: { ...state, strays: state.strays + count },
  effects: [],
  onward: { go: 'wait' },
});
