// The one thing that matters now, in the order of what cannot wait: trouble with the file, a pause, a hold, a
// question, a verdict, and only then how the touch is coming along.
import type { HoldReason, Question } from '../events.js';
import type { ReadyStep } from '../inputs.js';
import type { Verdict } from '../verdict.js';
import { readTouch } from '../walk/read-touch.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';
import { selectBoard, selectSubject } from './subject.js';

export type Status =
  | { readonly kind: 'trouble'; readonly reason: string }
  | {
      readonly kind: 'paused';
      readonly reason: 'asked' | 'link-lost' | 'meter-silent' | 'file-blocked';
    }
  | { readonly kind: 'held'; readonly reason: HoldReason; readonly detail: string }
  | {
      readonly kind: 'question';
      readonly question: Question;
      readonly pin: string;
      /** The place along the pin's line that is asked about, where it is not the pin itself. */
      readonly place: WalkState['probing'];
      /** A good board reads overload at this pin. */
      readonly expectedOverload: boolean;
    }
  /** The probe rests on a judged pin. */
  | { readonly kind: 'judged'; readonly verdict: Verdict; readonly confirming: boolean }
  /** In the air, with a verdict that waits for its repeat touch. */
  | { readonly kind: 'again'; readonly verdict: Verdict }
  | {
      readonly kind: 'settling' | 'charging' | 'restless';
      /** Probability that the creep is over, 0 to 1. */
      readonly settled: number;
      /** What is left to creep, as a fraction of the level; null where that says nothing. */
      readonly left: number | null;
    }
  /** `board`: which one is to be touched, where there are two. */
  | { readonly kind: 'waiting'; readonly board: 'donor' | 'patient' | null }
  /** The probe still rests on what belongs to the past. */
  | { readonly kind: 'lift' }
  /** `rests`: on the first ground, which must be left before the second can be touched. */
  | { readonly kind: 'ground'; readonly which: 1 | 2; readonly rests: boolean }
  /** The leads are tried before the first ground; `refused`: this contact will not do. */
  | { readonly kind: 'ready'; readonly step: ReadyStep; readonly refused: boolean }
  | { readonly kind: 'finished' };

export const selectStatus = (state: WalkState, trouble: string | null): Status => {
  if (trouble !== null) return { kind: 'trouble', reason: trouble };
  if (state.paused !== null) return { kind: 'paused', reason: state.paused };
  if (state.hold !== null) return { kind: 'held', ...state.hold };
  const isOver = state.stage === 'finished' || state.stage === 'closed';
  if (isOver && state.probing === null) return { kind: 'finished' };
  if (state.question !== null) {
    const { question, pin } = state.question;
    const place = state.probing?.side === undefined ? null : state.probing;
    const expectedOverload = state.plan.pins[indexOfPin(state, pin)]?.expected === 'overload';
    return { kind: 'question', question, pin, place, expectedOverload };
  }
  if (state.ready !== null) {
    const { step, refused } = state.ready;
    return { kind: 'ready', step, refused };
  }
  if (state.stage === 'ground-check') return selectGround(state);
  return selectTouch(state);
};

const selectGround = ({ grounds, contact }: WalkState): Status => ({
  kind: 'ground',
  which: grounds === 0 ? 1 : 2,
  rests: grounds > 0 && contact.rest !== null,
});

const selectTouch = (state: WalkState): Status => {
  const subject = selectSubject(state);
  if (subject?.judged) {
    return { kind: 'judged', verdict: subject.record.verdict, confirming: subject.confirming };
  }
  const touch = readTouch(state);
  switch (touch.phase) {
    case 'resting':
      return { kind: 'lift' };
    case 'air':
      return subject?.confirming
        ? { kind: 'again', verdict: subject.record.verdict }
        : { kind: 'waiting', board: selectBoard(state) };
    case 'landing':
      return { kind: 'settling', settled: 0, left: null };
    case 'creeping':
    case 'settled':
      return { kind: 'settling', ...progress(touch) };
    case 'charging':
      return { kind: 'charging', ...progress(touch) };
    case 'wobbling':
      return { kind: 'restless', ...progress(touch) };
  }
};

const progress = ({
  settled,
  remainder,
  level,
}: {
  readonly settled: number;
  readonly remainder: number;
  readonly level: number;
}): { settled: number; left: number | null } => ({
  settled,
  left: Math.abs(level) > 0 ? Math.min(9.99, Math.abs(remainder / level)) : null,
});
