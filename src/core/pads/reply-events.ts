// Answers by reply pad in the session file.
import { z } from 'zod';
import { padCommands } from './pad.js';

const reply = z.enum(padCommands);

/** A pad as it was learned: in the function's unit. */
export const learnedPad = z.strictObject({
  command: reply,
  value: z.number().positive(),
  standardUncertainty: z.number().nonnegative(),
});

export const replyBodies = {
  /** A double touch on a reply pad: echoed, and not carried out yet. */
  'reply-asked': z.strictObject({ reply }),
  /** It counts: what follows from it comes next. */
  'reply-given': z.strictObject({ reply }),
  'reply-cancelled': z.strictObject({ reply }),
  /** A line reads like this pad, which is not listened to from here on. */
  'reply-shadowed': z.strictObject({ reply }),
} as const;
