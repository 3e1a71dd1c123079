// What is said in a drill.
import type { DrillQuestion } from '../drill/question.js';

export interface DrillWords {
  readonly title: string;
  /** "easy", "medium", "hard". */
  level(level: number): string;
  begins(title: string, level: string, questions: number): string;
  /**
   * What is to be seen, then what is asked. `reads` is what the pin reads, or reads under pressure; `other` what is
   * expected of it, or what it reads released.
   */
  ask(question: DrillQuestion, reads: string, other: string): readonly [string, string];
  choice(kind: DrillQuestion['kind'], choice: string): string;
  /** For an answer worth so many points. */
  marked(points: 0 | 0.5 | 1): string;
  /** What the session came to, why, and what the answer given overlooks. */
  explain(question: DrillQuestion, answer: string, reads: string, other: string): string;
  score(points: string, of: number): string;
  /** The best of earlier results. */
  earlier(times: number, best: string, of: number): string;
  readonly firstTime: string;
  progress(nth: number, of: number, points: string): string;
  /** Leaves the briefing. */
  readonly begin: string;
  readonly goOn: string;
  readonly skipAhead: string;
  readonly pause: string;
  readonly resume: string;
  readonly leave: string;
  /** What the key that leaves says once more, half way. */
  readonly leaveAgain: string;
  /** Left after so many answers. */
  left(answered: number, of: number): string;
  readonly choose: string;
  /** Whoever answers in lines. */
  howToAnswer(choices: number): string;
  noChoice(typed: string): string;
  readonly unanswered: string;
  savedIn(path: string): string;
}
