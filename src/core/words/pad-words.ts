// What is said of reply pads: what each does, how to build one, and how they are learned.
import type { PadCommand } from '../pads/pad.js';
import type { MeasureFunction } from '../reading.js';

export interface PadWords {
  /** What a double touch on the pad does. */
  readonly does: Readonly<Record<PadCommand, string>>;
  readonly columns: {
    readonly pad: string;
    readonly resistor: string;
    readonly reads: string;
    readonly does: string;
  };
  between(low: string, high: string): string;
  /** Every pad is at least so many percent away from the next and from what the profile may read. */
  distance(percent: number): string;
  /** How to make the scrap board, and how to use it: a line each. */
  readonly build: readonly string[];
  learning(measure: MeasureFunction, count: number): string;
  wanted(command: PadCommand, at: number, of: number): string;
  learned(command: PadCommand, value: string): string;
  refused(command: PadCommand, what: string): string;
  saved(file: string, count: number): string;
  readonly ended: string;
  /** At the beginning of a walk: pads that are not listened to, and why. */
  otherFunction(learnedIn: MeasureFunction, walked: MeasureFunction): string;
  leftOut(command: PadCommand, why: string): string;
  note(text: string): string;
}
