// Lines for the technician that no session file holds, such as why the cues are not what was asked for.

export interface Notices {
  readonly said: readonly string[];
  say(text: string): void;
  /** Told what was said before, then all that follows. */
  follow(listener: (text: string) => void): void;
}

export const createNotices = (): Notices => {
  const said: string[] = [];
  const listeners: ((text: string) => void)[] = [];
  return {
    said,
    say(text) {
      said.push(text);
      for (const listener of listeners) listener(text);
    },
    follow(listener) {
      for (const text of said) listener(text);
      listeners.push(listener);
    },
  };
};
