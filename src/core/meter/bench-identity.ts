// How the virtual bench answers when it is asked who it is, and how to know it by that: over a wire nothing else
// tells a practice meter from a real one. A bench that imitates a meter which is never asked cannot be known.
import type { WalkEvent } from '../events.js';
import { parseIdentity } from './identity.js';

/** IEEE 488.2, 10.14: four fields, 0 where there is nothing to say. */
export const benchIdentity = 'PINWALK,VIRTUAL BENCH,0,1';

const bench = parseIdentity(benchIdentity);

/** True of the event in which the bench names itself. */
export const isBenchSpeaking = (
  event: Pick<WalkEvent, 'type'> & { readonly says?: unknown; readonly text?: unknown },
): boolean => {
  if (event.type !== 'meter-spoke' || event.says !== 'identity') return false;
  const said = typeof event.text === 'string' ? parseIdentity(event.text) : null;
  return said !== null && said.maker === bench?.maker && said.model === bench.model;
};
