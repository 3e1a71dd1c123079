// Learning keys and pedals by pressing them, one act after another. Pure: a key and where the learning stands
// give the next.
import { type ScreenAct, screenActs } from '../../core/words/screen-words.js';
import type { Key } from '../keys/parse-keys.js';

export interface Learning {
  /** Index of the act asked for; the number of acts when all are done. */
  readonly at: number;
  readonly learnt: Readonly<Partial<Record<ScreenAct, readonly string[]>>>;
  readonly refused:
    | { readonly why: 'taken'; readonly name: string; readonly by: ScreenAct }
    | { readonly why: 'never'; readonly name: string }
    | null;
}

export const beginLearning: Learning = { at: 0, learnt: {}, refused: null };

export const isLearnt = ({ at }: Learning): boolean => at >= screenActs.length;

export const learnKey = (learning: Learning, { name }: Key): Learning => {
  const act = screenActs[learning.at];
  if (act === undefined) return learning;
  const { learnt } = learning;
  if (name === 'escape') return { at: screenActs.length, learnt, refused: null };
  if (name === 'enter') return { at: learning.at + 1, learnt, refused: null };
  if (name === 'paste') return { ...learning, refused: { why: 'never', name } };
  const by = screenActs.find((other) => learnt[other]?.includes(name));
  if (by !== undefined) return { ...learning, refused: { why: 'taken', name, by } };
  return { at: learning.at + 1, learnt: { ...learnt, [act]: [name] }, refused: null };
};
