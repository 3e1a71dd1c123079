// What is said of the job around the walk: intake, cautions, residual volts, triage.
import type { UsualCaution } from '../job/cautions.js';
import type { Answer, DataMatters, IntakeFields } from '../job/job-events.js';

export type IntakeField = keyof IntakeFields;

export interface JobWords {
  readonly field: Readonly<Record<IntakeField, string>>;
  readonly dataMatters: Readonly<Record<DataMatters, string>>;
  readonly answer: Readonly<Record<Answer, string>>;
  noted(field: string, text: string): string;
  forgotten(field: string): string;
  photo(file: string, sha256: string): string;
  confirmed(caution: string): string;
  observed(asks: string, answer: Answer): string;

  readonly form: {
    readonly title: string;
    readonly ask: Readonly<Record<IntakeField, string>>;
    readonly photo: string;
    readonly observations: string;
    notAnAnswer(given: string): string;
  };
  readonly cautions: {
    readonly title: string;
    readonly usual: Readonly<Record<UsualCaution, string>>;
    readonly deferTo: string;
    readonly ask: string;
    readonly refused: string;
    readonly needed: string;
    /** On the virtual bench, where nothing can be hurt. */
    readonly onRealBoard: string;
  };
  readonly residual: {
    title(limit: string): string;
    place(line: string | null, pin: string | null): string;
    readonly ask: string;
    readonly turnDial: string;
    readonly held: string;
    readonly nothing: string;
    readonly restless: string;
    readonly overload: string;
    measured(line: string | null, volts: string, isDischarged: boolean): string;
    readonly again: string;
    skipped(reason: string): string;
    readonly why: string;
    notVolts(given: string): string;
    readonly noKeyboard: string;
    readonly typeThem: string;
    readonly askedNot: string;
    back(measure: string): string;
  };
  readonly triage: {
    readonly nothingNamed: string;
    readonly unclear: string;
    likeliest(says: string, percent: number): string;
    why(why: string): string;
    factor(asks: string, answer: Answer, factor: number): string;
    other(percent: number): string;
    walkFirst(groups: string): string;
    readonly notHere: string;
    leaveAlone(groups: string): string;
    next(asks: string): string;
    canObserve(observation: string, asks: string): string;
  };
}
