// A pin that goes unread.
import type { EventOf } from '../events.js';
import { namesOf, type PlannedPin } from '../profile/plan.js';

export const unreadAt = (t: number, pin: PlannedPin): EventOf<'pin-judged'> => ({
  type: 'pin-judged',
  t,
  ...namesOf(pin),
  verdict: 'unread',
  confidence: 1,
  expected: pin.expected,
  agreed: true,
});
