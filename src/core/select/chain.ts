// A line as a chain from its pin to the chip, each place with the probability that it is at fault.
import { cleanText } from '../clean-text.js';
import { boardWeigher } from '../suspects/board-weigher.js';
import { type ChainView, chainView } from '../suspects/chain-view.js';
import type { WalkState } from '../walk/state.js';

export interface ChainPlace {
  readonly kind: ChainView['stops'][number]['kind'];
  readonly name: string;
  readonly probability: number;
}

export interface Chain {
  readonly line: string;
  /** From the pin to the chip; where several pins carry the line, their joints come first. */
  readonly places: readonly ChainPlace[];
  readonly lead: number;
  readonly other: number;
  readonly none: number;
}

const longestName = 24;

/** Null while nothing on the board is in question, and for a line of which nothing but its pin is known. */
export const selectChain = (state: WalkState, index: number): Chain | null => {
  const { profile, plan, evidence, ranked } = state;
  const planned = plan.pins[index];
  if (planned === undefined || ranked === null) return null;
  const view = chainView(boardWeigher(profile, plan)(evidence), planned.line, planned.pin);
  if (view.stops.length < 2) return null;
  const { entries, stops, lead, other, none } = view;
  return {
    line: cleanText(planned.line, 40),
    places: [
      ...entries.map(({ pin, probability }) => ({ kind: 'joint' as const, id: pin, probability })),
      ...stops,
    ].map(({ kind, id, probability }) => ({ kind, name: cleanText(id, longestName), probability })),
    lead,
    other,
    none,
  };
};

/** The place most likely at fault, where one is likelier than a fifth. */
export const likeliestPlace = ({ places }: Chain): ChainPlace | null => {
  const [first] = places.toSorted((a, b) => b.probability - a.probability);
  return first !== undefined && first.probability > 0.2 ? first : null;
};
