// The ground check: two touches of ground with a lift between them, before the first pin.
import type { EventOf } from '../events.js';
import { gapLikelihood } from './gap-likelihood.js';
import { viewOf } from './take-capture.js';
import { isGround } from './tap.js';
import { tellPlace } from './tell.js';
import type { Teller } from './teller.js';

/** A lift must be so many times likelier than a slip: less for somebody who was asked to lift. */
const untold = 3;
const told = 0.02;

export const checkGround = (teller: Teller, { t, value = 0 }: EventOf<'touch-captured'>): void => {
  const { contact, grounds } = teller.state;
  if (!isGround(teller.state, value)) {
    teller.tell({ type: 'ground-missed', t, value });
    return;
  }
  const { slip, lift } = gapLikelihood(viewOf(teller.state));
  const likelier = teller.state.groundRepeated ? told : untold;
  if (grounds === 1 && lift <= likelier * slip && contact.gap.level !== null) {
    teller.tell({ type: 'ground-repeated', t, value });
    return;
  }
  teller.tell({ type: 'ground-touched', t, value, which: grounds === 0 ? 1 : 2 });
  if (teller.state.grounds === 2) {
    teller.tell({ type: 'ground-checked', t, outcome: 'good' });
    tellPlace(teller, t, true);
  }
};
