// What a report says of the job around the walk: what was brought in and why, what was confirmed and measured before
// the first reading, what the observations put in question.
import type { Answer, DataMatters, IntakeFields } from '../job/job-events.js';
import type { Datum, Phrase } from './report-phrase.js';

export interface JobReportWords {
  readonly title: string;
  /** On the first page. */
  readonly broughtTitle: string;
  readonly field: Readonly<Record<keyof IntakeFields, string>>;
  /** A sentence for the owner. */
  readonly dataMatters: Readonly<Record<DataMatters, string>>;
  readonly data: Readonly<Record<DataMatters, string>>;
  readonly cautions: {
    readonly title: string;
    readonly by: Readonly<Record<'keyboard' | 'option', string>>;
    readonly none: string;
  };
  readonly residual: {
    readonly title: string;
    readonly at: string;
    readonly where: string;
    readonly input: string;
    readonly volts: string;
    readonly says: string;
    discharged(limit: Datum): Phrase;
    charged(limit: Datum): Phrase;
    readonly by: Readonly<Record<'meter' | 'typed', string>>;
    skipped(reason: Datum): Phrase;
    readonly none: string;
  };
  readonly photos: {
    readonly title: string;
    readonly file: string;
    readonly hash: string;
    readonly size: string;
  };
  readonly triage: {
    readonly title: string;
    readonly observation: string;
    readonly answer: string;
    readonly says: Readonly<Record<Answer, string>>;
    readonly likely: string;
    readonly other: string;
    readonly walkFirst: string;
    readonly leaveAlone: string;
    readonly nothing: string;
    readonly how: string;
  };
}
