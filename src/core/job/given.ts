// What a person gave at intake, by options, a file or the keyboard, and the events it makes.
import { cleanText } from '../clean-text.js';
import type { WalkEvent } from '../events.js';
import type { Profile } from '../profile/profile-format.js';
import type { Job, Photo } from './job.js';
import { type Answer, type IntakeFields, longestText } from './job-events.js';
import { triage } from './triage.js';

export interface Given {
  readonly fields: IntakeFields;
  readonly photos: readonly Pick<Photo, 'file' | 'sha256' | 'bytes'>[];
  readonly observed: Readonly<Record<string, Answer>>;
}

export const nothingGiven: Given = { fields: {}, photos: [], observed: {} };

/** What both say; where they differ, `later` counts. */
export const joinGiven = (earlier: Given, later: Given): Given => ({
  fields: { ...earlier.fields, ...later.fields },
  photos: [...earlier.photos, ...later.photos],
  observed: { ...earlier.observed, ...later.observed },
});

/**
 * One event for the fields, one for each photo and observation, and what the observations propose, the earlier ones
 * among them.
 * @param before the job so far
 */
export const givenEvents = (
  { fields, photos, observed }: Given,
  profile: Profile,
  before: Job,
  t: number,
): readonly WalkEvent[] => {
  const events: WalkEvent[] = [];
  const noted = cleanFields(fields);
  if (Object.keys(noted).length > 0) events.push({ type: 'intake-noted', t, ...noted });
  for (const { file, sha256, bytes } of photos) {
    events.push({ type: 'photo-attached', t, file: cleanText(file, 300), sha256, bytes });
  }
  const seen = Object.entries(observed);
  if (seen.length === 0) return events;
  const known = profile.observations ?? {};
  for (const [observation, answer] of seen) {
    const asks = (Object.hasOwn(known, observation) && known[observation]?.asks) || observation;
    events.push({ type: 'symptom-observed', t, observation, asks, answer });
  }
  const earlier = before.observed.map((one) => [one.observation, one.answer] as const);
  const proposed = triage(profile, { ...Object.fromEntries(earlier), ...observed });
  return proposed === null ? events : [...events, { type: 'groups-proposed', t, ...proposed }];
};

const cleanFields = ({ dataMatters, ...texts }: IntakeFields): IntakeFields => {
  const cleaned: Record<string, string> = {};
  for (const [field, text] of Object.entries(texts)) {
    if (text !== undefined) cleaned[field] = text === '' ? '' : cleanText(text.trim(), longestText);
  }
  return { ...cleaned, ...(dataMatters === undefined ? {} : { dataMatters }) };
};
