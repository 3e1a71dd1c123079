// The verdicts in English: the same words on the screen, aloud and in a report.
import type { Verdict } from '../verdict.js';

export const englishVerdicts: Readonly<Record<Verdict, string>> = {
  normal: 'normal',
  low: 'low',
  high: 'high',
  short: 'short',
  open: 'open',
  unsure: 'unsure',
  wobble: 'wobble',
  unread: 'unread',
};
