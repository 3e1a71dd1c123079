// A drill: a recorded session to be played with its verdicts held back, and what a trainee is asked on the way.
import { z } from 'zod';
import { provenance } from '../profile/profile-format.js';

export const questionKinds = ['verdict', 'press', 'part', 'finding', 'cause'] as const;

export const drillFormat = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-drill/1'),
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/u, 'use a-z, 0-9 and -, at most 40'),
  title: z.string().min(1).max(120),
  /** 1 for easy, 3 for hard. */
  level: z.int().min(1).max(3),
  /** What the trainee is told before it begins. */
  briefing: z.string().min(1).max(600),
  /** The session file, seen from the drill's own folder or from the folder beside it that holds sessions. */
  session: z
    .string()
    .regex(/^[\w+#-][\w.+#-]*\.jsonl$/u, 'the name of a session file, without a folder'),
  /** SHA-256 over the session file's bytes, 64 hex digits. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/u, '64 hex digits'),
  asks: z.array(z.enum(questionKinds)).min(1),
  /** At which pins the verdict is asked: those that are not normal and as many others, or all. */
  pins: z.enum(['findings-and-as-many', 'all']),
  provenance,
});

export type Drill = z.infer<typeof drillFormat>;
