// What is said where a file that was named is no session to work with.
import type { EventOf, WalkEvent } from '../core/events.js';
import { english } from '../core/words/english.js';
import { storedKind } from '../store/stored-kind.js';
import { exitCodes, UserError } from './user-error.js';

const words = english.refusals;

/** @throws UserError for a file of another kind; damage is for whoever reads it to tell. */
export const refuseOtherKinds = (file: string): void => {
  const kind = storedKind(file);
  if (kind === undefined || kind === 'session') return;
  throw new UserError(words.otherThanSession(file, kind), exitCodes.badFile);
};

/** @throws UserError */
export const refuseEmpty = (file: string): never => {
  throw new UserError(words.emptySession(file), exitCodes.badFile);
};

/** @throws UserError */
export const refuseNoSession = (file: string): never => {
  throw new UserError(words.noSession(file), exitCodes.badFile);
};

/** The header of a stored session. @throws UserError where there is none. */
export const openingOf = (event: unknown, file: string): EventOf<'session-opened'> => {
  const opened = event as WalkEvent | undefined;
  return opened?.type === 'session-opened' ? opened : refuseEmpty(file);
};
