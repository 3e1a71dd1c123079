// Tells by its content what sort of file something is, whatever its name.
import { readAtMost } from './read-text-file.js';

export type StoredKind =
  | 'driver'
  | 'profile'
  | 'drill'
  | 'session'
  | 'reading log'
  | 'reply pads'
  | 'configuration';

const beginning = 64 * 1024;

/**
 * By marks that survive damage and slips: any of the first lines will do for a session or log. Undefined for a
 * file that is none of ours. @throws FileError when it cannot be read.
 */
export const storedKind = (path: string): StoredKind | undefined => {
  const text = readAtMost(path, beginning).toString('utf8');
  if (/^\s*\{\s*"seq"\s*:/mu.test(text)) return 'session';
  if (/"format"\s*:\s*"pinwalk-driver\//u.test(text)) return 'driver';
  if (/"format"\s*:\s*"pinwalk-profile\//u.test(text)) return 'profile';
  if (/"format"\s*:\s*"pinwalk-config\//u.test(text)) return 'configuration';
  if (/"format"\s*:\s*"pinwalk-pads\//u.test(text)) return 'reply pads';
  if (/"format"\s*:\s*"pinwalk-drill\//u.test(text)) return 'drill';
  const isLog = /^\s*\{(?=.*"t"\s*:)(?=.*"(?:function|mark|fault|blank)"\s*:)/mu.test(text);
  if (isLog) return 'reading log';
  if (/"(?:wire|talk)"\s*:/u.test(text)) return 'driver';
  return /"(?:connector|lines)"\s*:/u.test(text) ? 'profile' : undefined;
};
