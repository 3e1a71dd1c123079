// A profile that the program makes: checked as any other, written whole or not at all, never in place of what it was
// made from or of a session.
import { basename, resolve } from 'node:path';
import { cleanText } from '../core/clean-text.js';
import { readDefinition } from '../core/definition/read-definition.js';
import { formatProblem } from '../core/problems.js';
import type { Profile } from '../core/profile/profile-format.js';
import { profileKind } from '../core/profile/profile-kind.js';
import { ReportFileError, writeReport } from '../report/write-report.js';
import { FileError } from '../store/file-error.js';
import { storedKind } from '../store/stored-kind.js';
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
    throw new UserError(`${where} is learned from; give another name`, exitCodes.usage);
  }
  if (!force) return;
  let kind: ReturnType<typeof storedKind>;
  try {
    kind = storedKind(out);
  } catch (error) {
    if (error instanceof FileError) return;
    throw error;
  }
  if (kind === 'session') {
    throw new UserError(`${where} is a session, which is never replaced`, exitCodes.unwritten);
  }
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

/** @throws UserError when it cannot be written, or is there and may not be replaced. */
export const writeProfile = (out: string, text: string, force: boolean): void => {
  try {
    writeReport(out, text, { force });
  } catch (error) {
    if (!(error instanceof ReportFileError)) throw error;
    throw new UserError(error.message, exitCodes.unwritten);
  }
};
