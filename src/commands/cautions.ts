// Confirming the cautions: the one part of intake that a walk on a real meter insists on.
import type { WalkEvent } from '../core/events.js';
import type { CautionToConfirm } from '../core/job/cautions.js';
import type { JobWords } from '../core/words/job-words.js';
import type { Asking } from './asking.js';
import { exitCodes, UserError } from './user-error.js';

export const sayCautions = (
  cautions: readonly CautionToConfirm[],
  say: (line: string) => void,
  { cautions: words }: JobWords,
): void => {
  say(words.title);
  for (const { says } of cautions) say(`  - ${says}`);
  say(words.deferTo);
};

/** @throws UserError when they are not confirmed. */
export const askCautions = async (
  cautions: readonly CautionToConfirm[],
  { ask, say }: Asking,
  words: JobWords,
): Promise<void> => {
  sayCautions(cautions, say, words);
  const answer = await ask(words.cautions.ask);
  if (!/^y(es)?$/iu.test(answer)) throw new UserError(words.cautions.refused, exitCodes.usage);
};

export const confirmed = (
  cautions: readonly CautionToConfirm[],
  by: 'keyboard' | 'option',
  t: number,
): readonly WalkEvent[] =>
  cautions.map(({ caution, says }) => ({ type: 'caution-confirmed', t, caution, says, by }));
