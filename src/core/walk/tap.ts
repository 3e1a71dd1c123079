// What a tap on ground looks like: the hands-free "yes" to a question.
import type { EndedTouch } from './contact.js';
import type { WalkState } from './state.js';
import { contactFloor } from './usable.js';

/** A tap is shorter than this, a real touch of ground is held longer. */
const longestTapS = 1;

export const isGround = (state: WalkState, value: number): boolean =>
  value <= 10 * contactFloor(state.plan.function);

export const isTap = (state: WalkState, touch: EndedTouch): boolean =>
  isGround(state, touch.value) && touch.to - touch.from < longestTapS;

/** Taps on ground can answer here: at a pin that is itself ground, touching ground is reading it. */
export const tapsAnswer = ({ question, plan, cursor }: WalkState): boolean =>
  question?.question === 'open' && plan.pins[cursor]?.kind !== 'ground';

/** A touch of ground while the question stands may be a tap: it is no capture before it has lasted. */
export const mayBeTap = (state: WalkState, value: number): boolean => {
  const { touch } = state.contact;
  return (
    tapsAnswer(state) &&
    touch !== null &&
    isGround(state, value) &&
    touch.creep.lastT - touch.creep.startT < longestTapS
  );
};
