// What the walk asked, and how and when it was answered.
import type { Numbered, Question } from '../events.js';
import type { AnsweredBy } from '../words/report-words-technical.js';

export interface Asked {
  readonly question: Question;
  readonly pin: string;
  readonly askedT: number;
  /** Null where no answer came. */
  readonly answer: { readonly t: number; readonly by: AnsweredBy } | null;
}

export interface QuestionLog {
  take(event: Numbered): void;
  readonly asked: readonly Asked[];
}

export const createQuestionLog = (): QuestionLog => {
  const asked: Asked[] = [];
  return {
    asked,
    take(event) {
      if (event.type === 'question-asked') {
        asked.push({ question: event.question, pin: event.pin, askedT: event.t, answer: null });
      } else if (event.type === 'question-answered') {
        const at = asked.findLastIndex(
          ({ question, pin, answer }) =>
            answer === null && question === event.question && pin === event.pin,
        );
        const open = asked[at];
        if (open !== undefined) asked[at] = { ...open, answer: { t: event.t, by: event.by } };
      }
    },
  };
};
