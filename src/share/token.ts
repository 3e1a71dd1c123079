// The token a shop's server asks for, from the environment or from a file that nobody else can read.
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

const tokenVariable = 'PINWALK_TOKEN';

export class TokenError extends Error {
  override readonly name = 'TokenError';
  constructor(
    readonly slip: 'unreadable' | 'open-to-others' | 'no-token',
    readonly file: string | null,
  ) {
    super(slip);
  }
}

/** Null where there is neither. @throws TokenError, which never carries the token. */
export const readToken = (
  file: string | undefined,
  env: Readonly<Record<string, string | undefined>> = process.env,
): string | null => {
  const given = env[tokenVariable];
  if (given !== undefined && given !== '') return checked(given, null);
  return file === undefined ? null : checked(readPrivate(file), file);
};

/** RFC 6750, section 2.1: the characters of a bearer token. */
const tokenForm = /^[\w.~+/-]{1,4000}=*$/u;

const checked = (text: string, file: string | null): string => {
  const token = text.trim();
  if (!tokenForm.test(token)) throw new TokenError('no-token', file);
  return token;
};

const longest = 4096;

const readPrivate = (file: string): string => {
  let fd: number;
  try {
    fd = openSync(file, 'r');
  } catch {
    throw new TokenError('unreadable', file);
  }
  try {
    const { mode } = fstatSync(fd);
    // Windows keeps no such bits: a user's own folder is closed to others there.
    if (process.platform !== 'win32' && (mode & 0o077) !== 0) {
      throw new TokenError('open-to-others', file);
    }
    const buffer = Buffer.alloc(longest);
    return buffer.toString('utf8', 0, readSync(fd, buffer, 0, longest, 0));
  } catch (error) {
    throw error instanceof TokenError ? error : new TokenError('unreadable', file);
  } finally {
    closeSync(fd);
  }
};
