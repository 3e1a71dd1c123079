// The words in which a conversation with a meter and the world around it speak: events in, effects out, both
// plain data. Times are seconds on the link's clock.
import type { Frame } from '../../framing.js';
import type { MeasureFunction, Reading } from '../../reading.js';

/** What the session wants measured. */
export interface Wanted {
  readonly function: MeasureFunction;
  /** Full scale in the function's SI unit: the driver's nearest range that holds it is chosen. */
  readonly range?: number;
}

export type DialogueEvent =
  /** The link is up, for the first time or again. */
  | { readonly event: 'opened'; readonly t: number }
  | { readonly event: 'lost'; readonly t: number }
  | {
      readonly event: 'frame';
      readonly t: number;
      readonly frame: Frame;
      /** It came in one piece with the frame before. */
      readonly together?: boolean | undefined;
    }
  /** The time asked for has come. Early, late and needless calls do no harm. */
  | { readonly event: 'wake'; readonly t: number };

export type DialogueEffect =
  /** Complete, with the line end the driver wants. */
  | { readonly effect: 'send'; readonly text: string }
  /** Wake the dialogue at `t`; replaces any wake asked for before. */
  | { readonly effect: 'wake'; readonly t: number }
  | { readonly effect: 'reading'; readonly reading: Reading }
  | {
      readonly effect: 'says';
      readonly t: number;
      readonly says: 'identity' | 'error' | 'no-answer';
      /** Cleaned. */
      readonly text: string;
    };

export interface Stepped<S> {
  readonly state: S;
  readonly effects: readonly DialogueEffect[];
}

/** The driver cannot do what is wanted; the message is one line for the user. */
export class DialogueError extends Error {
  override readonly name = 'DialogueError';
}
