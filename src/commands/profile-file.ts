// A profile that the program makes: checked as any other, written whole or not at all, never in place of what it was
// made from or of a session.
import { basename, resolve } from 'node:path';
import { cleanText } from '../core/clean-text.js';
import { readDefinition } from '../core/definition/read-definition.js';
import { formatProblem } from '../core/problems.js';
import type { Profile } from '../core/profile/profile-format.js';
import { profileKind } from '../core/profile/profile-kind.js';
import { english } from '../core/words/english.js';
import { FileError } from '../store/file-error.js';
import { refuseSession } from './refuse-session.js';
import { exitCodes, UserError } from './user-error.js';

/** A profile is found by its id as the name of its file. */
export const idFor = (out: string | undefined): { readonly id?: string } => {
  const name = /^(\w[\w+#.-]{0,39})\.json$/u.exec(basename(out ?? ''))?.[1];
  return name === undefined ? {} : { id: name };
};

/** Before anything is worked out: nothing replaces what it is made from, nor any session. @throws UserError */
export const refuseOut = (out: string, inputs: readonly string[], force: boolean): void => {
  const where = cleanText(out, 300);
  if (inputs.some((input) => resolve(input) === resolve(out))) {
    throw new UserError(english.refusals.learnedFrom(where), exitCodes.usage);
  }
  if (force) refuseSession(out, where);
};

export interface ProfileText {
  readonly text: string;
  /** What will probably surprise, in words. */
  readonly warnings: readonly string[];
}

/** @param name for messages. @throws FileError when the profile would not be usable. */
export const profileText = (profile: Profile, name: string): ProfileText => {
  const text = `${JSON.stringify(profile, null, 2)}\n`;
  const { content, problems } = readDefinition(profileKind, text);
  if (content === undefined) throw new FileError(name, problems);
  return { text, warnings: problems.map((one) => formatProblem(cleanText(name, 300), one)) };
};
