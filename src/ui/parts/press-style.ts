// How a finding looks: as the verdict it resembles.

import type { PressFinding } from '../../core/press/decide-press.js';
import type { Verdict } from '../../core/verdict.js';

export const verdictOfFinding: Readonly<Record<PressFinding, Verdict>> = {
  loose: 'open',
  cracked: 'open',
  bridged: 'short',
  'steady-open': 'unread',
  steady: 'normal',
  inconclusive: 'unsure',
};
