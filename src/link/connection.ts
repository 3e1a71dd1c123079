// One connection to a far end, from dialling to its end. A connection is never reused: whoever wants the far
// end again dials again.

export interface Connection {
  /** Does nothing when the connection is not up. */
  send(bytes: Uint8Array): void;
  /** Resolves when everything that could keep the process alive is let go. No event follows. */
  close(): Promise<void>;
}

export interface ConnectionEvents {
  opened(): void;
  bytes(chunk: Uint8Array): void;
  /** It could not be opened, or it ended. Called once, last. */
  gone(why: Gone): void;
}

export interface Gone {
  /** Cleaned, in words. */
  readonly reason: string;
  /** Nothing is there at all: no news for someone who already knows that it went away. */
  readonly absent: boolean;
}

/** Starts one connection. No event comes before it returns. */
export type Dial = (events: ConnectionEvents) => Connection;
