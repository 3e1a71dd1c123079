// A report before it has a form: sections of a few kinds of blocks. Sections are written once and drawn by every
// form; a new section needs no change in any form.
import type { Verdict } from '../verdict.js';
import type { Phrase } from '../words/report-phrase.js';

export interface ReportDocument {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly title: Phrase;
  /** What was walked and when. */
  readonly about: readonly Phrase[];
  /** What must not be missed, such as that no meter was there. */
  readonly notices: readonly Notice[];
  readonly summary: Summary;
  /** The first page, in plain words. */
  readonly owner: readonly Section[];
  /** One line at the end of the first page. */
  readonly footer: Phrase;
  /** For a colleague; perhaps in another language. */
  readonly technical: {
    readonly language: string;
    readonly direction: 'ltr' | 'rtl';
    readonly title: Phrase;
    readonly sections: readonly Section[];
  };
}

export interface Notice {
  readonly title: Phrase;
  readonly text: Phrase;
}

export interface Summary {
  /** `fault`: something is wrong. `doubt`: something is not clear or not measured. */
  readonly tone: 'sound' | 'doubt' | 'fault';
  readonly headline: Phrase;
  readonly pins: readonly PinMark[];
  /** The marks in words. */
  readonly tally: Phrase;
}

export interface Section {
  /** Stable, for links and styles. */
  readonly id: string;
  readonly title: Phrase;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'text'; readonly text: Phrase }
  | { readonly kind: 'list'; readonly items: readonly Item[] }
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | Card
  | Table
  | Connector
  | Trace;

export interface Item {
  readonly verdict?: Marked;
  readonly text: Phrase;
  readonly small?: Phrase;
}

export interface Fact {
  readonly label: Phrase;
  readonly says: readonly Phrase[];
}

/** One finding with all that is known of it. */
export interface Card {
  readonly kind: 'card';
  readonly verdict: Marked;
  readonly title: Phrase;
  readonly facts: readonly Fact[];
}

export interface Table {
  readonly kind: 'table';
  readonly caption: Phrase;
  /** The caption is to be read over the table; otherwise the section's title says as much. */
  readonly titled?: true;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface Column {
  readonly title: Phrase;
  /** Figures stand on the right, the scale has a width of its own. */
  readonly as: 'words' | 'figures' | 'scale';
}

export interface Cell {
  readonly text: Phrase;
  readonly small?: Phrase;
  readonly verdict?: Marked;
  readonly scale?: ScaleMark;
  /** Names its row. */
  readonly heads?: true;
}

export interface Connector {
  readonly kind: 'connector';
  readonly title: Phrase;
  readonly rows: readonly { readonly title: Phrase; readonly pins: readonly PinMark[] }[];
  readonly legend: readonly Marked[];
}

/** Readings over time while a part was pressed, with the time from each cue to press to its cue to release. */
export interface Trace {
  readonly kind: 'trace';
  readonly caption: Phrase;
  readonly from: number;
  readonly to: number;
  readonly points: readonly { readonly t: number; readonly at: number | null }[];
  readonly presses: readonly { readonly from: number; readonly to: number }[];
  /** Whether the limits of a good board stand at their usual places on the axis. */
  readonly hasLimits: boolean;
  readonly words: { readonly overload: string; readonly limits: string; readonly press: string };
}

/** A verdict with its word in the report's language. */
export interface Marked {
  readonly verdict: Verdict;
  readonly word: string;
}

export interface PinMark extends Marked {
  readonly pin: string;
  readonly line: string;
}

/** Where a reading lies between the limits of its line, 0 to 1 along an axis that shows more than the band. */
export interface ScaleMark {
  readonly at: number;
  readonly beyond: 'below' | 'above' | null;
  /** Twice the standard uncertainty to each side, along the same axis. */
  readonly from: number;
  readonly to: number;
  readonly verdict: Verdict;
}
