// A sign for each verdict where only ASCII can be shown: a plain terminal, a plain text.
import type { Verdict } from '../verdict.js';

export const verdictSigns: Readonly<Record<Verdict, string>> = {
  normal: '=',
  low: 'v',
  high: '^',
  short: '_',
  open: 'o',
  unsure: '?',
  wobble: '~',
  unread: '.',
};
