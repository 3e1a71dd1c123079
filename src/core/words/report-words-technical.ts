// What the technical pages of a report say: the half of a report's catalogue that is for a colleague.
import type { EventOf, HoldReason, Question } from '../events.js';
import type { ActName } from '../inputs.js';
import type { PressFinding } from '../press/decide-press.js';
import type { ProfileLine } from '../profile/profile-format.js';
import type { nextActions } from '../verdict.js';
import type { Certainty } from '../walk/certainty.js';
import type { Datum, Phrase } from './report-phrase.js';
import type { SharedWords } from './report-words.js';

/** Stretches in which nothing could be measured or nothing was. */
export type InterruptionKind =
  | 'link-lost'
  | 'link-failed'
  | 'meter-silent'
  | 'held'
  | 'paused'
  | 'file-blocked'
  | 'left';

export type AnsweredBy = EventOf<'question-answered'>['by'];

/** What a proposed probe names, ready to stand in a sentence. */
export interface ProbeNames {
  readonly line: Datum;
  readonly pin: Datum | null;
  readonly part: Datum | null;
}

/** Findings, pins, press tests and suspects. */
export interface EvidenceWords {
  readonly finding: {
    readonly title: string;
    readonly none: string;
    pin(pin: Datum, line: Datum): Phrase;
    readonly read: string;
    touch(value: Phrase, readings: number, at: Datum): Phrase;
    answered(at: Datum): Phrase;
    range(fullScale: Datum): Phrase;
    readonly good: string;
    readonly confidence: string;
    readonly mate: string;
    mateReads(line: Datum, value: Phrase, verdict: string): Phrase;
    readonly way: string;
    shunt(part: Datum): Phrase;
    readonly where: string;
    readonly next: string;
    readonly advice: Readonly<Record<(typeof nextActions)[number], string>>;
  };
  readonly confidence: Readonly<Record<Certainty, string>>;
  readonly pins: {
    readonly title: string;
    readonly caption: string;
    readonly pin: string;
    readonly line: string;
    readonly read: string;
    readonly scale: string;
    readonly good: string;
    readonly verdict: string;
    readonly confidence: string;
    readonly nothingExpected: string;
    readonly unrepeated: string;
    touches(n: number): Phrase;
    readonly kind: Readonly<Record<ProfileLine['kind'], string>>;
    readonly digits: string;
  };
  /** A donor board walked beside the patient. */
  readonly donor: {
    readonly title: string;
    readonly caption: string;
    readonly donor: string;
    readonly patient: string;
    readonly off: string;
    readonly explained: string;
  };
  readonly press: {
    readonly title: string;
    readonly line: string;
    readonly place: string;
    readonly finding: string;
    readonly answered: string;
    answeredOf(n: number, cycles: number): Phrase;
    readonly pressedValue: string;
    readonly releasedValue: string;
    readonly raw: string;
    readonly adjusted: string;
    readonly findings: Readonly<Record<PressFinding, string>>;
    readonly anyPlace: string;
    readonly bareBoard: string;
    compared(line: Datum, outcome: EventOf<'press-compared'>['outcome'], parts: Phrase): Phrase;
    readonly noSham: string;
    trace(line: Datum, place: Phrase, finding: string): Phrase;
    readonly pressing: string;
    readonly limits: string;
    readonly explained: string;
  };
  readonly freePress: {
    readonly title: string;
    readonly rests: string;
    readonly restsAt: Readonly<Record<'contact' | 'none', string>>;
    readonly left: string;
    readonly reads: string;
    readonly dwell: string;
    readonly repeats: string;
    readonly doesRepeat: string;
    readonly doesNotRepeat: string;
    readonly marked: string;
    /** Away from its rest in so many of the marked presses, and so often between them. */
    marks(away: number, presses: number, between: number): Phrase;
    readonly noMarks: string;
    trace(line: Datum): Phrase;
    readonly explained: string;
  };
  readonly suspects: {
    readonly title: string;
    readonly place: string;
    readonly lines: string;
    readonly probability: string;
    readonly none: string;
    readonly other: string;
    /** Over the places of one line, from its pin to the chip. */
    chain(pin: Datum, line: Datum): Phrase;
    next(probe: NonNullable<EventOf<'suspects-ranked'>['next']>, names: ProbeNames): Phrase;
    readonly explained: string;
  };
  readonly probed: {
    readonly title: string;
    readonly place: string;
    readonly atChip: string;
    /** `near` is the side towards the pin. */
    side(part: Datum, near: boolean): Phrase;
    readonly explained: string;
  };
}

/** The technical pages' own language, which may be another than the first page's. */
export interface TechnicalLanguage {
  readonly shared: SharedWords;
  readonly technical: TechnicalWords;
}

export interface TechnicalWords extends EvidenceWords {
  readonly title: string;
  readonly connector: {
    readonly title: string;
    readonly id: string;
    readonly profile: string;
    readonly pinOne: string;
    readonly viewed: string;
    readonly viewedAs: Readonly<Record<'plug' | 'receptacle', string>>;
    readonly numbering: string;
    readonly numberedAs: Readonly<Record<'row-wise' | 'odd-even' | 'around', string>>;
    readonly endTabs: string;
    readonly endTabsAre: Readonly<Record<'ground' | 'isolated' | 'none', string>>;
    row(n: number): string;
    readonly noRow: string;
    readonly map: string;
    readonly order: string;
  };
  readonly questions: {
    readonly title: string;
    readonly none: string;
    readonly asked: string;
    readonly question: string;
    readonly answer: string;
    readonly after: string;
    readonly says: Readonly<Record<Question, string>>;
    readonly by: Readonly<Record<AnsweredBy, string>>;
    readonly unanswered: string;
  };
  readonly acts: {
    readonly title: string;
    readonly none: string;
    readonly at: string;
    readonly act: string;
    readonly detail: string;
    readonly name: Readonly<Record<ActName, string>>;
    refused(act: string): Phrase;
    readonly byPad: string;
    readonly realigned: string;
    moved(places: number): Phrase;
    readonly groundDoubted: string;
    opens(n: number): Phrase;
  };
  readonly interruptions: {
    readonly title: string;
    readonly none: string;
    readonly from: string;
    readonly lasted: string;
    readonly what: string;
    readonly says: Readonly<Record<InterruptionKind, string>>;
    readonly held: Readonly<Record<HoldReason, string>>;
    readonly notOver: string;
  };
  readonly meter: {
    readonly title: string;
    readonly identity: string;
    readonly unnamed: string;
    readonly driver: string;
    readonly noDriver: string;
    readonly link: string;
    readonly measured: string;
    readonly readings: string;
    counted(values: number, overloads: number, blanks: number, faults: number): Phrase;
    readonly lowBattery: string;
    lowBatteryIn(n: number): Phrase;
    readonly leads: string;
    leadsZeroed(ohms: Datum): Phrase;
    readonly reference: string;
    referenceRead(read: Datum, known: Datum, good: boolean): Phrase;
    readonly ground: string;
    readonly groundSkipped: string;
    readonly groundLeftOut: string;
    readonly errors: string;
    readonly accuracy: string;
    readonly from: Readonly<Record<'driver' | 'option' | 'assumed', string>>;
    readonly range: string;
    readonly anyRange: string;
    readonly inferred: string;
    readonly resolution: string;
    readonly ofReading: string;
    readonly counts: string;
    readonly uncertainty: string;
    verdicts(least: Datum): Phrase;
  };
  readonly expected: {
    readonly title: string;
    readonly profile: string;
    readonly by: string;
    readonly date: string;
    readonly how: string;
    readonly source: string;
    readonly boards: string;
    boardsOf(boards: number, lines: number): Phrase;
    readonly unstated: string;
    readonly holdFor: string;
  };
  readonly record: {
    readonly title: string;
    readonly file: string;
    readonly fingerprint: string;
    readonly entries: string;
    unknown(n: number): Phrase;
    torn(bytes: number): Phrase;
    readonly openings: string;
    readonly profileHash: string;
    readonly driverHash: string;
    verify(command: Datum): Phrase;
    readonly limits: string;
  };
}
