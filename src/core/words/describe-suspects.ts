// What is suspected, the way of a line from pin to chip, and the places probed, in words.
import type { EventOf } from '../events.js';
import { selectChain } from '../select/chain.js';
import type { WalkState } from '../walk/state.js';
import type { Words } from './words.js';

/** The likeliest places, a lead before all others where it leads, and the next best probe. */
export const suspectsInWords = (
  { suspects, next }: EventOf<'suspects-ranked'>,
  state: WalkState,
  words: Words,
): string => {
  const [first] = suspects;
  const said = words.suspects(
    suspects
      .slice(0, 3)
      .map(
        ({ where, id, probability }) =>
          [words.suspect(where, id), Math.round(100 * probability)] as const,
      ),
  );
  const lead = first?.where === 'lead' ? words.checkLead(words.suspect('lead', first.id)) : null;
  const then = next === null ? null : words.nextProbe(next);
  const index = state.plan.pins.findIndex(({ line }) => line === first?.lines[0]);
  const chain = lead === null ? chainInWords(state, index, words) : null;
  return [lead, said, chain, then].filter((part) => part !== null).join(' ');
};

/** The line of a pin from the pin to the chip, each place with its share; null where nothing is known of that. */
export const chainInWords = (state: WalkState, index: number, words: Words): string | null => {
  const chain = selectChain(state, index);
  if (chain === null) return null;
  const places = chain.places.map(
    ({ name, probability }) => [name, Math.round(100 * probability)] as const,
  );
  return words.chain(chain.line, places);
};

/** A probe's place by name: a pin, or a place along a line. */
export const probeInWords = (
  { line, pin, part, side }: Pick<EventOf<'probe-begun'>, 'line' | 'pin' | 'part' | 'side'>,
  words: Words,
): string =>
  side === undefined ? words.pinPlace(pin ?? '', line) : words.probePlace(line, part ?? null, side);
