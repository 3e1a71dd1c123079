// What a report says, as functions of what happened: one catalogue a language. Names, values and foreign text
// arrive as data of their own, so a catalogue never builds markup and never needs to escape.

import type { PressFinding } from '../press/decide-press.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import type { Lead } from '../suspects/priors.js';
import type { Verdict } from '../verdict.js';
import type { Datum, Phrase } from './report-phrase.js';
import type { JobReportWords } from './report-words-job.js';
import type { LaterWords } from './report-words-later.js';
import type { TechnicalLanguage } from './report-words-technical.js';

/** How a reading that is not normal differs, for someone who knows nothing of it. */
export type PlainFault =
  | 'low'
  | 'high'
  | 'short'
  | 'open'
  /** Something is read where a good board shows nothing. */
  | 'unexpected'
  /** Nothing is read, and nothing tells what a good board shows. */
  | 'open-unknown';

/** Findings of a press test in which the line answered. */
export type AnsweringFinding = Extract<PressFinding, 'loose' | 'cracked' | 'bridged'>;

export interface Day {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** From the first to the last moment of a session, written. */
export interface WrittenSpan {
  readonly day: string;
  readonly from: Datum;
  /** Null where it ended on the same day. */
  readonly lastDay: string | null;
  readonly to: Datum;
  readonly zone: Datum | null;
}

/** Names of pins, listed, and how many they are. */
export interface NamedPins {
  readonly names: Phrase;
  readonly count: number;
}

/** What both parts of a report say. */
export interface SharedWords {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly comma: string;
  /** What came before the walk. */
  readonly job: JobReportWords;
  /** The work after the walk. */
  readonly later: LaterWords;
  /** Between the stops of a way, in the direction of reading. */
  readonly arrow: string;
  more(n: number): Phrase;
  readonly verdict: Readonly<Record<Verdict, string>>;
  readonly measure: Readonly<Record<MeasureFunction, string>>;
  readonly polarity: Readonly<Record<Polarity, string>>;
  readonly overload: string;
  /** A place that may be at fault. */
  place(where: 'joint' | 'part' | 'chip', id: Datum): Phrase;
  readonly lead: Readonly<Record<Lead, string>>;
  day(day: Day): string;
  atMost(limit: Datum): Phrase;
  between(low: Datum, high: Datum): Phrase;
}

/** A language. One that has no technical pages of its own takes those of another. */
export interface ReportWords {
  readonly shared: SharedWords;
  readonly owner: OwnerWords;
  readonly inDetail: TechnicalLanguage;
}

/** The first page: no term that is not explained where it stands. */
export interface OwnerWords {
  readonly title: string;
  connector(id: Datum, title: Phrase | null): Phrase;
  when(span: WrittenSpan | null): Phrase;
  readonly simulated: { readonly title: string; readonly text: string };
  readonly demo: { readonly title: string; readonly text: string };
  readonly recorded: { readonly title: string; readonly text: string };
  /** The customer's data was taken out; `of` is the whole session's fingerprint, cut short. */
  redacted(of: Datum): { readonly title: string; readonly text: Phrase };
  unfinished(left: number, total: number): { readonly title: string; readonly text: Phrase };
  /** The page in one sentence. */
  readonly headline: {
    faults(n: number, total: number): Phrase;
    unclear(n: number, total: number): Phrase;
    partly(read: number, left: number): Phrase;
    allNormal(total: number): Phrase;
    readonly nothing: string;
  };
  tally(counts: readonly (readonly [Verdict, number])[]): Phrase;
  readonly failed: {
    readonly title: string;
    fault(pin: Datum, line: Phrase, fault: PlainFault): Phrase;
    read(value: Phrase, good: Phrase | null): Phrase;
    readonly readNothing: string;
    unclear(pins: NamedPins): Phrase;
    readonly none: string;
    readonly nothingMeasured: string;
    more(n: number): Phrase;
    /** `at`: the pins it explains, where there are others that it does not. */
    likely(place: Phrase, probability: Datum, at: NamedPins | null): Phrase;
    /** No place is likely enough to be named for these. */
    unplaced(pins: NamedPins): Phrase;
    likelyLead(lead: Phrase, probability: Datum): Phrase;
  };
  readonly why: {
    readonly title: string;
    method(measure: MeasureFunction): Phrase;
    readonly repeated: string;
    readonly confirmed: string;
    confidence(least: Datum): Phrase;
    readonly fromHere: string;
    pressed(lines: Phrase, part: Datum | null, finding: AnsweringFinding): Phrase;
  };
  readonly done: {
    readonly title: string;
    readonly measuredOnly: string;
    readonly nothing: string;
    notes(n: number): Phrase;
  };
  readonly checked: {
    readonly title: string;
    pins(read: number, total: number, connector: Datum, measure: MeasureFunction): Phrase;
    meter(meter: Datum): Phrase;
    readonly typed: string;
    readonly groundGood: string;
    readonly groundSkipped: string;
    sittings(n: number): Phrase;
    presses(n: number): Phrase;
  };
  readonly unchecked: {
    readonly title: string;
    readonly function: string;
    unread(pins: NamedPins): Phrase;
    unclear(pins: NamedPins): Phrase;
    unrepeated(pins: NamedPins): Phrase;
    nothingExpected(pins: NamedPins): Phrase;
    readsNothing(pins: NamedPins): Phrase;
    readonly behind: string;
  };
  readonly data: { readonly title: string; readonly text: string };
  footer(fingerprint: Datum, day: Phrase): Phrase;
}
