// How a command speaks on stdout: one JSON object a line, lines of text, or a screen. Without a terminal it is
// text by itself.
import { exitCodes, UserError } from './user-error.js';

export type Face = 'json' | 'plain' | 'screen';

export interface FaceOptions {
  readonly json?: boolean;
  readonly plain?: boolean;
}

/** @throws UserError when two faces are asked for at once. */
export const chooseFace = (
  { json, plain }: FaceOptions,
  terminal: { readonly output: boolean; readonly input: boolean },
): Face => {
  if (json && plain) throw new UserError('give --json or --plain, not both', exitCodes.usage);
  if (json) return 'json';
  return plain || !terminal.output || !terminal.input ? 'plain' : 'screen';
};
