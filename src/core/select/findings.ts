// What is left to look at: every pin that does not read normal, and how the walk stands as a whole.
import { cleanText } from '../clean-text.js';
import { type ExpectedBounds, type Verdict, verdicts } from '../verdict.js';
import { patientAlone, pinCount } from '../walk/patient.js';
import type { WalkState } from '../walk/state.js';

export interface Finding {
  readonly index: number;
  readonly pin: string;
  readonly line: string;
  readonly verdict: Verdict;
  readonly expected: ExpectedBounds;
  readonly agreed: boolean;
}

export const selectPin = (state: WalkState, index: number): Finding | null => {
  const planned = state.plan.pins[index];
  const record = state.pins[index];
  if (planned === undefined || record === undefined) return null;
  return {
    index,
    pin: cleanText(planned.pin, 40),
    line: cleanText(planned.line, 40),
    verdict: record.verdict,
    expected: record.expected,
    agreed: record.agreed,
  };
};

/** Every judged pin that is not normal, in walking order; unread ones too once the walk has gone past them. */
export const selectFindings = (state: WalkState): readonly Finding[] =>
  state.pins.flatMap(({ verdict }, index) => {
    if (verdict === 'normal') return [];
    if (verdict === 'unread' && index >= state.cursor) return [];
    const finding = selectPin(state, index);
    return finding === null ? [] : [finding];
  });

export interface Progress {
  readonly counts: readonly (readonly [Verdict, number])[];
  readonly left: number;
  readonly total: number;
}

/** How many pins bear each verdict that occurs, and how many the walk has not reached. */
export const selectProgress = (state: WalkState): Progress => {
  const counts = new Map<Verdict, number>();
  let left = 0;
  const { total, at } = pinCount(state.plan, state.cursor);
  const cursor = state.cursor >= state.plan.pins.length ? total : at - 1;
  const { pins } = patientAlone(state);
  pins.forEach(({ verdict }, index) => {
    if (verdict === 'unread' && index >= cursor) left += 1;
    else counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  });
  const present = verdicts.flatMap((verdict) => {
    const n = counts.get(verdict);
    return n === undefined ? [] : [[verdict, n] as const];
  });
  return { counts: present, left, total };
};
