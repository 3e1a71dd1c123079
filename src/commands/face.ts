// How a command speaks on stdout: one JSON object a line, lines of text, or a screen. Without a terminal it is
// text by itself.
import { english } from '../core/words/english.js';
import { exitCodes, UserError } from './user-error.js';

export type Face = 'json' | 'plain' | 'screen';

export interface FaceOptions {
  readonly json?: boolean;
  readonly plain?: boolean;
}

/** Which ends of the terminal a person is at. */
export interface Terminal {
  readonly output: boolean;
  readonly input: boolean;
}

export const terminalHere = (): Terminal => ({
  output: process.stdout.isTTY === true,
  input: process.stdin.isTTY === true,
});

/** Somebody sits at a keyboard and sees questions. */
export const canAsk = ({ json, plain }: FaceOptions, { output, input } = terminalHere()): boolean =>
  output && input && !json && !plain;

/** @throws UserError when two faces are asked for at once. */
export const chooseFace = (
  { json, plain }: FaceOptions,
  terminal: Terminal = terminalHere(),
): Face => {
  if (json && plain) throw new UserError(english.refusals.jsonOrPlain, exitCodes.usage);
  if (json) return 'json';
  return plain || !terminal.output || !terminal.input ? 'plain' : 'screen';
};
