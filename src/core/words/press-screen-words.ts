// What the press view says. Short: every text has to fit a narrow terminal.
import type { EventOf } from '../events.js';
import type { CueName } from '../inputs.js';
import type { PressFinding } from '../press/decide-press.js';

/** What a window of a test showed. */
type Shown = 'normal' | 'open' | 'high' | 'short' | 'low' | 'unclear';

export interface PressScreenWords {
  readonly title: string;
  /** In large letters: Latin capitals. */
  readonly large: {
    readonly press: string;
    readonly release: string;
    readonly holdStill: string;
    /** The same for a narrow screen. */
    readonly hold: string;
    /** What the line does while it is pressed at will. */
    readonly reads: string;
    readonly open: string;
    readonly done: string;
  };
  readonly findingLarge: Readonly<Record<PressFinding, string>>;
  readonly cue: Readonly<Record<CueName, string>>;
  readonly shown: Readonly<Record<Shown, string>>;
  readonly pressed: string;
  readonly released: string;
  /** The place under the tool; null where no part is named. */
  under(place: string | null, sham: boolean): string;
  place(place: string | null, sham: boolean): string;
  /** Pressed at will: how often the line changed. */
  changed(times: number): string;
  readonly freeTitle: string;
  /** Keys: marks a press, marks its end, ends the test. */
  readonly pressingKey: string;
  readonly releasedKey: string;
  readonly endKey: string;
  placeOf(nth: number, of: number): string;
  cycle(n: number, fewest: number, most: number): string;
  cycleShort(n: number): string;
  readonly now: string;
  readonly next: string;
  finding(finding: PressFinding): string;
  /** What pressing did, in a sentence of its own. */
  says(finding: PressFinding, place: string | null, sham: boolean): string;
  /** Raw and adjusted, both as written. */
  chance(raw: string, adjusted: string): string;
  compared(outcome: EventOf<'press-compared'>['outcome'], parts: string): string;
}
