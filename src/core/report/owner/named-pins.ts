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
  return namedAs(
    found.map(({ planned }) => planned.pin),
    shared,
  );
};

/** Null where there is none. */
export const namedAs = (pins: readonly string[], shared: SharedWords): NamedPins | null =>
  pins.length === 0 ? null : { names: listed(pins.map(name), shared), count: pins.length };
