// A line that no pin of the profile carries was named.
import { quoted } from '../core/problems.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { exitCodes, UserError } from './user-error.js';

export const noSuchLine = ({ id, connector }: Profile, line: string): UserError => {
  const known = [...new Set(connector.pins.map((pin) => pin.line))];
  return new UserError(english.refusals.noLine(id, quoted(line), known), exitCodes.usage);
};
