// What a tap on ground looks like: the hands-free "yes" to a question.
import type { EndedTouch } from './contact.js';
import type { WalkState } from './state.js';
import { contactFloor } from './usable.js';
import { indexOfPin } from './whereabouts.js';

/**
 * A tap is shorter than this, a real touch of ground is held longer. Whoever sees only the display waits until a slow
 * one has shown the ground, so that a tap may last two readings more.
 */
const longestTapS = 1;
const readingsAwaited = 2;

/** A time of the hands, stretched by the wait for the display. */
export const awaitingDisplay = (seconds: number, { contact }: WalkState): number =>
  seconds + readingsAwaited * contact.clock.periodS;

export const isGround = (state: WalkState, value: number): boolean =>
  value <= 10 * contactFloor(state.plan.function);

export const isTap = (state: WalkState, touch: EndedTouch): boolean =>
  isGround(state, touch.value) && touch.to - touch.from < awaitingDisplay(longestTapS, state);

/** Taps on ground can answer here: at a pin that is itself ground, touching ground is reading it. */
export const tapsAnswer = (state: WalkState): boolean => {
  const { question, plan } = state;
  if (question?.question !== 'open') return false;
  return plan.pins[indexOfPin(state, question.pin)]?.kind !== 'ground';
};

/**
 * A touch of ground while the question stands, or begun before a probe was asked for, may be a tap: it is no capture
 * before it has lasted.
 */
export const mayBeTap = (state: WalkState, value: number): boolean => {
  const { touch } = state.contact;
  return (
    (tapsAnswer(state) || state.probing !== null) &&
    touch !== null &&
    isGround(state, value) &&
    touch.creep.lastT - touch.creep.startT < awaitingDisplay(longestTapS, state)
  );
};
