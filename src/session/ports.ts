// What the session needs from the world. Shells implement these; nothing here does anything.

import type { Numbered, WalkEvent } from '../core/events.js';
import type { Frame } from '../core/framing.js';
import type { Input } from '../core/inputs.js';

export type { Frame };

/**
 * A byte transport that cuts what it receives into frames. It keeps trying to come back after a loss, with
 * backoff, until closed. Each opening starts with an empty frame buffer and drops the first partial line.
 */
export interface Link {
  /** For the screen and the session file: cleaned, without control characters. */
  readonly title: string;
  /** Begins. May be called once. Every callback carries seconds of the monotonic clock. */
  open(listener: LinkListener): void;
  /** Sends text as it is, in the link's encoding. Silently does nothing while the link is down. */
  send(text: string): void;
  close(): Promise<void>;
}

export interface LinkListener {
  /** `again` is true after a loss. */
  opened(t: number, again: boolean): void;
  /** @param together true where it came in one piece with the frame before. */
  frame(t: number, frame: Frame, together?: boolean): void;
  /** The link is down and will be tried again. */
  lost(t: number, reason: string): void;
  /** The link was never there, or will not be tried again. */
  failed(t: number, reason: string): void;
  /** The source has said all it had to say (end of a file or of standard input). */
  ended(t: number): void;
}

/** Where inputs come from: a meter over a link, a reading log, typed values. */
export interface Feed {
  readonly title: string;
  /** The times of its inputs are its own (a recording, typed values), not the clock's. */
  readonly ownTime?: boolean;
  start(take: (input: Input) => void): void;
  stop(): Promise<void>;
}

/** Seconds of a monotonic clock, from any start. */
export interface Clock {
  now(): number;
  /** Calls back once after `seconds`; the returned function cancels. */
  after(seconds: number, call: () => void): () => void;
}

/** The session file: whatever `append` returned without throwing survives the death of the process. */
export interface Journal {
  append(events: readonly WalkEvent[]): readonly Numbered[];
  /** Asks for the disk, without waiting. */
  sync(): void;
  /** Chain value over every line so far, 64 hex digits. */
  readonly fingerprint: string;
  close(): Promise<void>;
}

/** Someone who follows the walk: a screen, a printer, a cue player, the virtual technician. */
export type Follower = (event: Numbered) => void;
