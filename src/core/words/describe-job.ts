// An event of the job around the walk in words, a line each.
import { cleanText } from '../clean-text.js';
import type { JobEvent } from '../event-families.js';
import type { EventOf } from '../events.js';
import { isDischarged } from '../job/residual.js';
import { formatReading } from '../measure/format-reading.js';
import type { Profile } from '../profile/profile-format.js';
import { describeTriage } from './describe-triage.js';
import type { IntakeField, JobWords } from './job-words.js';

const longest = 300;
const clean = (text: string): string => cleanText(text, longest);

/** One line but for a proposal, which has a few. */
export const describeJob = (
  event: JobEvent,
  profile: Profile,
  words: JobWords,
): readonly string[] =>
  event.type === 'groups-proposed'
    ? describeTriage(event, profile, words)
    : [describeFact(event, words)];

type Fact = Exclude<JobEvent, { readonly type: 'groups-proposed' }>;

const describeFact = (event: Fact, words: JobWords): string => {
  switch (event.type) {
    case 'intake-noted':
      return describeNoted(event, words).join('; ');
    case 'photo-attached':
      return words.photo(clean(event.file), event.sha256);
    case 'caution-confirmed':
      return words.confirmed(clean(event.says));
    case 'residual-measured': {
      const volts = formatReading(event.volts, null, 'V');
      return words.residual.measured(event.line, volts, isDischarged(event.volts, event.limit));
    }
    case 'residual-skipped':
      return words.residual.skipped(clean(event.reason));
    case 'symptom-observed':
      return words.observed(clean(event.asks), event.answer);
  }
};

const describeNoted = (noted: EventOf<'intake-noted'>, words: JobWords): string[] =>
  (Object.keys(words.field) as IntakeField[]).flatMap((field) => {
    const text = noted[field];
    if (text === undefined) return [];
    if (text === '') return [words.forgotten(words.field[field])];
    const shown =
      field === 'dataMatters' ? words.dataMatters[noted.dataMatters ?? 'unknown'] : text;
    return [words.noted(words.field[field], clean(shown))];
  });
