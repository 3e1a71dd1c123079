// A pin that goes unread.
import type { EventOf } from '../events.js';
import type { PlannedPin } from '../profile/plan.js';

export const unreadAt = (
  t: number,
  { pin, line, expected }: PlannedPin,
): EventOf<'pin-judged'> => ({
  type: 'pin-judged',
  t,
  pin,
  line,
  verdict: 'unread',
  confidence: 1,
  expected,
  agreed: true,
});
