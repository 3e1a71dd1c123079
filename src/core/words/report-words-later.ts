// What a report says of the work after the walk: rework and heat, recheck, tests, closing. For both of its parts.
import type { Doubt } from '../recheck/closing.js';
import type { Difference, RecheckOutcome, RecheckReason } from '../recheck/recheck-events.js';
import type {
  drawJudgements,
  functionOutcomes,
  JobOutcome,
  ReworkAction,
  ReworkTool,
} from '../rework/rework-events.js';
import type { Datum, Phrase } from './report-phrase.js';

export interface LaterWords {
  readonly action: Readonly<Record<ReworkAction, string>>;
  readonly tool: Readonly<Record<ReworkTool, string>>;
  readonly unnamedPlace: string;
  readonly difference: Readonly<Record<Difference, string>>;
  readonly because: Readonly<Record<RecheckReason, string>>;
  readonly outcome: Readonly<Record<RecheckOutcome, string>>;
  readonly doubt: Readonly<Record<Doubt, string>>;
  readonly as: Readonly<Record<JobOutcome, string>>;
  readonly draw: Readonly<Record<(typeof drawJudgements)[number], string>>;
  readonly works: Readonly<Record<(typeof functionOutcomes)[number], string>>;
  /** The first page. */
  readonly owner: {
    /** The job was closed as repaired; `proven` where the recheck bears it out. */
    repaired(proven: boolean): string;
    readonly partlyRepaired: string;
    readonly notRepaired: string;
    readonly returned: string;
    /** The tally of the first walk, once the board was worked on. */
    beforeWork(tally: Phrase): Phrase;
    done(place: Phrase, action: string, times: number, heat: Datum | null): Phrase;
    /** The technical pages list them all. */
    moreDone(n: number): string;
    rechecked(read: number, total: number, outcome: string): Phrase;
    pressedAgain(n: number): string;
    functionTested(tested: Datum, works: string): Phrase;
    power(draw: string): Phrase;
    readonly noPower: string;
    reason(text: Datum): Phrase;
    /** What the technician named as the cause when the job was closed. */
    cause(text: Datum): Phrase;
  };
  readonly rework: {
    readonly title: string;
    readonly at: string;
    readonly place: string;
    readonly action: string;
    readonly setting: string;
    readonly heat: string;
    readonly note: string;
    setPoint(figure: Datum): Phrase;
    airflow(figure: Datum): Phrase;
    readonly atLeast: string;
    readonly confirmed: string;
    totals(where: Phrase, total: Datum, allowed: Datum | null): Phrase;
    passed(where: Phrase, allowed: Datum): Phrase;
  };
  readonly recheck: {
    readonly title: string;
    readonly caption: string;
    readonly file: string;
    readonly fingerprint: string;
    readonly began: string;
    readonly result: string;
    readonly controls: string;
    readonly controlsAre: Readonly<Record<'as-before' | 'moved' | 'unread', string>>;
    readonly pressed: string;
    readonly pressIs: Readonly<Record<'stays' | 'moves' | 'unclear' | 'not-pressed', string>>;
    readonly notFinished: string;
    readonly pin: string;
    readonly line: string;
    readonly why: string;
    readonly before: string;
    readonly after: string;
    readonly compared: string;
    readonly score: string;
    readonly explained: string;
  };
  readonly tests: {
    readonly title: string;
    readonly power: string;
    drawn(amperes: Datum | null, volts: Datum | null, limit: Datum | null, draw: string): Phrase;
    readonly function: string;
    readonly closed: string;
    readonly reason: string;
    readonly cause: string;
    readonly restsOn: string;
    readonly open: string;
  };
}
