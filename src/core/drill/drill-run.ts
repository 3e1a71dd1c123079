// How far a trainee has come in a drill. Pure: answers come in, marks come out.
import { type DrillQuestion, pointsFor } from './question.js';

export interface Marked {
  readonly question: DrillQuestion;
  readonly answer: string;
  readonly points: 0 | 0.5 | 1;
}

export interface DrillRun {
  readonly questions: readonly DrillQuestion[];
  readonly marked: readonly Marked[];
  /** The last answer is being explained; nothing is asked meanwhile. */
  readonly explaining: boolean;
}

export const beginDrill = (questions: readonly DrillQuestion[]): DrillRun => ({
  questions,
  marked: [],
  explaining: false,
});

/** The question that comes next, asked by now or not; null when all are answered. */
export const nextQuestion = ({ questions, marked }: DrillRun): DrillQuestion | null =>
  questions[marked.length] ?? null;

/** The question to be answered now, where so many of the session's events have happened. */
export const askedAt = (run: DrillRun, at: number): DrillQuestion | null => {
  const next = nextQuestion(run);
  return !run.explaining && next !== null && at >= next.at ? next : null;
};

/** @param answer one of the question's choices; anything else changes nothing. */
export const takeAnswer = (run: DrillRun, at: number, answer: string): DrillRun => {
  const question = askedAt(run, at);
  if (question === null || !question.choices.includes(answer)) return run;
  const points = pointsFor(question, answer);
  return { ...run, marked: [...run.marked, { question, answer, points }], explaining: true };
};

export const pointsOf = ({ marked }: Pick<DrillRun, 'marked'>): number =>
  marked.reduce((sum, { points }) => sum + points, 0);
