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
  /** It could not be opened, or it ended; the reason is cleaned and in words. Called once, last. */
  gone(reason: string): void;
}

/** Starts one connection. No event comes before it returns. */
export type Dial = (events: ConnectionEvents) => Connection;
