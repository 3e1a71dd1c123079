// What the technician says about the walk's place, as likelihoods: people are right mostly, not always.
// Common practice, no source.
import type { WalkState } from './state.js';
import { type Entry, type Way, waitsFor } from './ways.js';
import { indexOfPin } from './whereabouts.js';

/** Something said in spite of the truth. */
const mistaken = 1e-5;

/** Does the walk ask where the probe is, or was? */
export const asksForPlace = ({ question }: Pick<WalkState, 'question'>): boolean =>
  question?.question === 'same-or-next' || question?.question === 'go-back';

/**
 * "Next" has two meanings: this pin is taken as it reads, and, to the question, this was the next pin. How
 * likely people say it is therefore a matter of degree.
 */
export const saysNext =
  (state: WalkState) =>
  ({ book, stage }: Way): number => {
    const newest = state.pending.at(-1)?.touch;
    const asked = asksForPlace(state);
    const arrived = asked && book?.capture === newest && book?.role === 'first';
    if (stage === 'confirming') return arrived ? 1 : 0.5;
    return arrived ? 0.3 : 0.02;
  };

/** While the walk offers to move, `next` agrees to a move onwards and `back` to one backwards. */
export const agreesToShift = (state: WalkState, act: 'next' | 'back'): boolean => {
  const told = state.named.at(-1)?.index;
  if (state.question?.question !== 'shifted' || told === undefined) return false;
  const offered = indexOfPin(state, state.question.pin);
  return act === 'next' ? offered > told : offered < told;
};

/** "Yes" to the question whether the readings are shifted: the newest told capture belongs to the pin asked about. */
export const saysShifted =
  (state: WalkState) =>
  ({ book }: Way): number => {
    const pin = state.question === null ? -1 : indexOfPin(state, state.question.pin);
    return newestTold(state, book)?.index === pin ? 1 : mistaken;
  };

/** "No, it is right": the newest told capture belongs where it was told. */
export const saysItIsRight =
  (state: WalkState) =>
  ({ book }: Way): number =>
    newestTold(state, book)?.index === state.named.at(-1)?.index ? 1 : mistaken;

/** Share of walks that are left off before their last pin. */
const leftOff = 0.02;

/** Nothing more will come, and people walk a connector to its end; those who do not leave off anywhere. */
export const saysDone =
  ({ plan: { pins } }: WalkState) =>
  (way: Way): number =>
    waitsFor(way) >= pins.length ? 1 : leftOff / pins.length;

const newestTold = ({ named }: WalkState, book: Entry | null): Entry | null => {
  const told = named.at(-1)?.capture.touch ?? -1;
  let entry = book;
  while (entry !== null && entry.capture > told) entry = entry.before;
  return entry;
};
