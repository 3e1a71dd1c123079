// Which free texts of a session are no customer's: names out of the profile, words of this program and of the
// meter. Whatever text is not listed here, in events of today or of tomorrow, is taken for the customer's.
import type { EventType } from '../events.js';

/** Fields that hold a name from the profile wherever they stand. */
const everywhere = [
  ...['pin', 'pins', 'line', 'lines', 'part', 'parts', 'place', 'places', 'area', 'group', 'id'],
];

/** `'*'` keeps every text of the event. Paths are dotted; entries of a list have no name of their own. */
const listed: Partial<Record<EventType, '*' | readonly string[]>> = {
  'session-opened': [
    ...['program', 'wallTime', 'zone', 'profile', 'driver', 'redacted'],
    ...['recheck.of.begins', 'recheck.of.fingerprint'],
  ],
  'caution-confirmed': ['caution', 'says'],
  'symptom-observed': ['observation', 'asks'],
  'groups-proposed': '*',
  'session-resumed': ['program', 'wallTime', 'zone'],
  'meter-spoke': ['text'],
  'walk-held': ['detail'],
  'act-refused': ['reason'],
  'lead-zero-refused': '*',
  'reference-checked': '*',
  'heat-limit-met': ['of'],
  'job-closed': ['cause', 'recheck.begins'],
};

/** Events that are about the customer's things and nothing else. */
export const leftOut: ReadonlySet<string> = new Set(['photo-attached']);

const kept: Readonly<Record<string, '*' | readonly string[]>> = listed;

/** @param path the way to the text inside its event, such as `['profile', 'content', 'title']`. */
export const isPlainText = (type: string, path: readonly string[]): boolean => {
  const last = path.at(-1) ?? '';
  if (everywhere.includes(last)) return true;
  const paths = Object.hasOwn(kept, type) ? kept[type] : undefined;
  if (paths === undefined) return false;
  return (
    paths === '*' || path.some((_, length) => paths.includes(path.slice(0, length + 1).join('.')))
  );
};
