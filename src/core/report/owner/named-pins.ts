// The pins of a kind as a list of names, for a sentence.
import { name, type Phrase } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { PinFacts } from '../pin-facts.js';
import { listed } from '../written.js';

/** Null where there is no such pin. */
export const namedPins = (
  pins: readonly PinFacts[],
  shared: SharedWords,
  is: (pin: PinFacts) => boolean,
): Phrase | null => {
  const found = pins.filter(is);
  return found.length === 0
    ? null
    : listed(
        found.map(({ planned }) => name(planned.pin)),
        shared,
      );
};
