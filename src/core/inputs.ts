// Everything that can make the walk decide something. Each input carries the time of its source, so that
// the same inputs give the same events, live and in a rerun.
import type { Reading } from './reading.js';

/** What the technician does beside probing: one key, pedal or reply each. */
export const actNames = [
  'open',
  'back',
  'next',
  'skip',
  'retake',
  'go-to',
  'note',
  'zero',
  'reference',
  'pause',
  'resume',
  'dismiss',
  'press',
  'probe',
  'pressing',
  'released',
  'quit',
] as const;
export type ActName = (typeof actNames)[number];

/** Sides of a place along a line: a part's terminal towards the pin or away from it, or the track before the chip. */
export const probeSides = ['near', 'far', 'chip'] as const;
export type ProbeSide = (typeof probeSides)[number];

/** What can be done with the leads before the walk begins. */
export const readySteps = ['lead-zero', 'reference'] as const;
export type ReadyStep = (typeof readySteps)[number];

export interface Act {
  readonly act: ActName;
  /** For `go-to`: the pin's name. */
  readonly pin?: string;
  /** For `note`: the cleaned text. */
  readonly text?: string;
  /** For `probe`: a place along a line; the one proposed where none is given. */
  readonly line?: string;
  readonly part?: string;
  readonly side?: ProbeSide;
  /** Given by a reply pad, not by a key. */
  readonly by?: 'pad';
}

/** What the paced press test asks of the technician, as a reading log records it. */
export const cueNames = ['press', 'release'] as const;
export type CueName = (typeof cueNames)[number];

export const linkChanges = ['opened', 'lost', 'returned', 'silent', 'failed', 'ended'] as const;
export type LinkChange = (typeof linkChanges)[number];

export type Input =
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'act'; readonly t: number; readonly act: Act }
  | { readonly kind: 'cue'; readonly t: number; readonly cue: CueName }
  | {
      readonly kind: 'link';
      readonly t: number;
      readonly change: LinkChange;
      /** Cleaned, in words: why it was lost, what came back. */
      readonly detail?: string;
    }
  | {
      /** The meter itself said something that is not a reading: its name, or an error from its queue. */
      readonly kind: 'meter';
      readonly t: number;
      readonly says: 'identity' | 'error' | 'no-answer';
      readonly text: string;
    }
  | {
      /** The session file could not be written for a while: what came in between is lost, and said so. */
      readonly kind: 'file';
      readonly t: number;
      readonly change: 'blocked' | 'writable';
      readonly detail: string;
    };

/** The moment an input belongs to, in seconds of its source's own time. */
export const inputTime = (input: Input): number =>
  input.kind === 'reading' ? input.reading.t : input.t;
