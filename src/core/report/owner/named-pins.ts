// The pins of a kind as a list of names, for a sentence.
import { name } from '../../words/report-phrase.js';
import type { NamedPins, SharedWords } from '../../words/report-words.js';
import type { PinFacts } from '../pin-facts.js';
import { listed } from '../written.js';

/** Null where there is no such pin. */
export const namedPins = (
  pins: readonly PinFacts[],
  shared: SharedWords,
  is: (pin: PinFacts) => boolean,
): NamedPins | null => {
  const found = pins.filter(is);
  if (found.length === 0) return null;
  const names = found.map(({ planned }) => name(planned.pin));
  return { names: listed(names, shared), count: found.length };
};
