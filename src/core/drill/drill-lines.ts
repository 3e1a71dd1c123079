// A question and what follows it as lines of words, whoever shows them.
import { cleanText } from '../clean-text.js';
import { formatReading } from '../measure/format-reading.js';
import { siUnit } from '../reading.js';
import type { WalkState } from '../walk/state.js';
import { shownExpected } from '../words/shown.js';
import type { Words } from '../words/words.js';
import type { Marked } from './drill-run.js';
import type { DrillQuestion } from './question.js';

export interface AskedLines {
  readonly sight: string;
  readonly ask: string;
  /** In the order of the question's choices. */
  readonly choices: readonly string[];
}

export const linesOfQuestion = (
  question: DrillQuestion,
  state: WalkState,
  words: Words,
): AskedLines => {
  const [sight, ask] = words.drill.ask(question, ...seen(question, state, words));
  const choices = question.choices.map((choice) => words.drill.choice(question.kind, choice));
  return { sight: cleanText(sight, 200), ask: cleanText(ask, 100), choices: choices.map(clean) };
};

/** Whether it was right, and what the session came to. */
export const linesOfMark = (
  { question, answer, points }: Marked,
  state: WalkState,
  words: Words,
): readonly [string, string] => [
  words.drill.marked(points),
  cleanText(words.drill.explain(question, answer, ...seen(question, state, words)), 400),
];

/** Points with at most one decimal. */
export const shownPoints = (points: number): string =>
  Number.isInteger(points) ? String(points) : points.toFixed(1);

const clean = (text: string): string => cleanText(text, 60);

/** What a pin reads and what it should; or what it reads pressed and released. */
const seen = (
  question: DrillQuestion,
  { plan }: WalkState,
  words: Words,
): readonly [reads: string, other: string] => {
  const unit = siUnit(plan.function);
  if (question.kind === 'finding') {
    const shown = (value: number | null): string =>
      value === null ? words.overload : formatReading(value, null, unit);
    return [shown(question.pressedValue), shown(question.releasedValue)];
  }
  if (question.kind !== 'verdict') return ['', ''];
  const { value, overload, standardUncertainty, expected } = question;
  const reads =
    overload || value === null ? words.overload : formatReading(value, standardUncertainty, unit);
  return [reads, shownExpected(expected, unit, words)];
};
