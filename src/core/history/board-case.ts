// What one session says of its board: the symptom it came with, and the places that turned out to be at fault. Fed
// with events as they lie in the file, unproven: whatever is missing, unknown or of another kind is passed over.

import { isBenchSpeaking } from '../meter/bench-identity.js';
import { shamPlace } from '../press/press-stage.js';
import { sessionFormat } from '../session-events.js';

/** How well a place is known to have been at fault: the job was closed with it, pressing found it, the ranking says so. */
export const evidences = ['confirmed', 'found', 'suspected'] as const;
export type CauseEvidence = (typeof evidences)[number];

export interface BoardCase {
  /** The same in every session of one board: a recheck names the session it goes back to. */
  readonly board: string;
  readonly profile: string;
  readonly simulated: boolean;
  /** The profile's symptom that fits best; null where none was noted or none stands out. */
  readonly symptom: string | null;
  /** Every pin was walked, or the job was closed. */
  readonly done: boolean;
  readonly causes: ReadonlyMap<string, CauseEvidence>;
}

type Fields = Readonly<Record<string, unknown>>;

export interface CaseReader {
  take(event: Fields): void;
  done(): BoardCase;
}

/** Types worth parsing; a session holds many thousand lines of others. */
export const tellingTypes: ReadonlySet<string> = new Set([
  'meter-spoke',
  'groups-proposed',
  'press-judged',
  'suspects-ranked',
  'walk-finished',
  'job-closed',
]);

/** A symptom or suspect below this is a guess. */
const likelyEnough = 0.5;
const answers: ReadonlySet<unknown> = new Set(['loose', 'cracked', 'bridged']);

/**
 * @param opened the session's first event.
 * @param begins the chain value after that line, by which other sessions name this one.
 * @throws RangeError in words where the header is none.
 */
export const caseReader = (opened: Fields, begins: string): CaseReader => {
  const profile =
    text(object(object(opened.profile).content).id) ?? text(object(opened.profile).id);
  if (opened.type !== 'session-opened') throw new RangeError('it does not begin with a header');
  if (opened.format !== sessionFormat) {
    throw new RangeError(`this version reads "${sessionFormat}" alone`);
  }
  if (profile === undefined) throw new RangeError('the header names no profile');
  let symptom: string | null = null;
  let done = false;
  let simulated = opened.simulated === true;
  let closedWith: string | undefined;
  const found = new Set<string>();
  let suspected: string | undefined;

  const take = (event: Fields): void => {
    switch (event.type) {
      case 'groups-proposed':
        symptom = likeliest(event.symptoms) ?? null;
        break;
      case 'press-judged': {
        const part = text(event.part);
        if (part === undefined || part === shamPlace) break;
        // Pressed again after the rework, a joint that stays is no cause any more, but it was.
        if (answers.has(event.finding)) found.add(part);
        break;
      }
      case 'suspects-ranked':
        suspected = likeliest(event.suspects);
        break;
      case 'meter-spoke':
        simulated ||= isBenchSpeaking({ ...event, type: 'meter-spoke' });
        break;
      case 'walk-finished':
        done = true;
        break;
      case 'job-closed':
        done = true;
        closedWith = text(event.cause) ?? closedWith;
        break;
      default:
        break;
    }
  };

  return {
    take,
    done: () => ({
      board:
        text(object(object(opened.recheck).of).begins) ??
        text(object(opened.redacted).of) ??
        begins,
      profile,
      simulated,
      symptom,
      done,
      causes: causesOf(closedWith, found, suspected),
    }),
  };
};

/** What the job was closed with outdoes what pressing found, and that what the ranking says. */
const causesOf = (
  closedWith: string | undefined,
  found: ReadonlySet<string>,
  suspected: string | undefined,
): ReadonlyMap<string, CauseEvidence> => {
  if (closedWith !== undefined) return new Map([[closedWith, 'confirmed']]);
  if (found.size > 0) return new Map([...found].map((place) => [place, 'found']));
  return suspected === undefined ? new Map() : new Map([[suspected, 'suspected']]);
};

/** Id of the first entry of a list that is in order, if it is likely enough. */
const likeliest = (list: unknown): string | undefined => {
  const first = object(Array.isArray(list) ? list[0] : undefined);
  const isLikely = typeof first.probability === 'number' && first.probability >= likelyEnough;
  return isLikely ? text(first.id) : undefined;
};

const object = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {};

const longestName = 80;

const text = (value: unknown): string | undefined =>
  typeof value === 'string' && value !== '' && value.length <= longestName ? value : undefined;
