// What a recorded session teaches: a named bench, how the walk is set, and notes in the order in which their
// moments come.
import type { Numbered } from '../../../src/core/events.js';

export interface Note {
  /** The moment; each note waits until the one before it has been written. */
  readonly when: (event: Numbered) => boolean;
  /** Seconds after that moment. */
  readonly afterS: number;
  readonly pin?: string;
  /** Short enough for one line of a narrow screen. */
  readonly text: string;
}

export interface Lesson {
  readonly name: string;
  /** As in `walk --link virtual:…`. */
  readonly bench: string;
  readonly pressTests: 'asked' | 'each';
  readonly notes: readonly Note[];
}

/** What fits beside "note at 26: " in 80 columns. */
export const longestNote = 66;

type Fields = Readonly<Record<string, unknown>>;

/** Happens with an event of this type whose fields are as given. */
export const on =
  (type: Numbered['type'], fields: Fields = {}): Note['when'] =>
  (event) =>
    event.type === type &&
    Object.entries(fields).every(([key, value]) => Reflect.get(event, key) === value);
