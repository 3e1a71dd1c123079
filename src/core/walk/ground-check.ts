// The ground check: two touches of ground with a lift between them, before the first pin.
import type { EventOf } from '../events.js';
import { gapLikelihood } from './gap-likelihood.js';
import { viewOf } from './take-capture.js';
import { isGround } from './tap.js';
import { tellPlace } from './tell.js';
import type { Teller } from './teller.js';

export const checkGround = (teller: Teller, { t, value = 0 }: EventOf<'touch-captured'>): void => {
  const { contact, grounds } = teller.state;
  if (!isGround(teller.state, value)) {
    teller.tell({ type: 'ground-missed', t, value });
    return;
  }
  const { slip, lift } = gapLikelihood(viewOf(teller.state));
  // Still the first touch, after a slip.
  if (grounds === 1 && lift <= 3 * slip && contact.gap.level !== null) return;
  teller.tell({ type: 'ground-touched', t, value, which: grounds === 0 ? 1 : 2 });
  if (teller.state.grounds === 2) {
    teller.tell({ type: 'ground-checked', t, outcome: 'good' });
    tellPlace(teller, t, true);
  }
};
