// What one good board read, as a profile to walk others by. One board proves little, and the profile says so.
import { hash } from 'node:crypto';
import { cleanText } from '../core/clean-text.js';
import { type Learned, learnProfile } from '../core/learn/learn-profile.js';
import type { Profile } from '../core/profile/profile-format.js';
import { programVersion } from '../core/version.js';
import { boardRefused } from '../core/words/english-learn.js';
import { readSession } from '../store/journal-reader.js';
import { type Definition, loadProfile } from '../store/load-definitions.js';
import { refuseNoSession } from './named-session.js';
import { profileText } from './profile-file.js';
import { readBoards } from './read-boards.js';
import { exitCodes, UserError } from './user-error.js';

export interface GoodBoard {
  readonly session: string;
  /** The connector; what the session itself carries where left out. */
  readonly profile?: string;
  readonly by?: string;
  /** The new profile's id. */
  readonly id?: string;
}

/** @throws UserError when the board cannot be learned from; FileError for what is damaged. */
export const learnFromBoard = ({ session, profile: named, by, id }: GoodBoard): Learned => {
  const carried = carriedBy(session);
  const base = named === undefined ? carried : loadProfile(named).content;
  const profile: Profile = { ...base, measure: { ...base.measure, ...functionOf(carried) } };
  const { function: measure, polarity } = profile.measure;
  const wanted = { function: measure, polarity };
  const outcome = learnProfile(readBoards([session], [], profile, wanted), profile, {
    ...wanted,
    // From one board no interval can be had, so none is asked for.
    factor: () => Number.POSITIVE_INFINITY,
    outliers: 'keep',
    by: cleanText(by ?? `pinwalk ${programVersion}`, 80),
    date: new Date().toISOString().slice(0, 10),
    ...(id === undefined ? {} : { id }),
  });
  if (outcome.ok) return outcome.learned;
  throw new UserError(outcome.refused.map(boardRefused), exitCodes.badFile);
};

/** The profile to compare a board with, as if it had been loaded. */
export const goodBoardProfile = (board: GoodBoard): Definition<Profile> => {
  const { profile: content } = learnFromBoard(board);
  const { text } = profileText(content, board.session);
  return {
    id: content.id,
    path: board.session,
    sha256: hash('sha256', text, 'hex'),
    content,
    warnings: [],
  };
};

const functionOf = ({ measure }: Profile): Pick<Profile['measure'], 'function' | 'polarity'> => ({
  function: measure.function,
  polarity: measure.polarity,
});

/** The session's own profile, with what was really measured. */
const carriedBy = (session: string): Profile => {
  for (const event of readSession(session)) {
    if (event.type !== 'session-opened') break;
    const { profile, measure } = event;
    return { ...profile.content, measure: { ...profile.content.measure, ...measure } };
  }
  return refuseNoSession(cleanText(session, 300));
};
