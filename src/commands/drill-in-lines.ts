// A drill in lines: asks, and takes answers from standard input, whose end leaves the drill.
import { createInterface } from 'node:readline';
import { cleanText } from '../core/clean-text.js';
import type { Drill } from '../core/drill/drill-format.js';
import { linesOfMark, linesOfQuestion } from '../core/drill/drill-lines.js';
import type { DrillQuestion } from '../core/drill/question.js';
import { english as words } from '../core/words/english.js';
import type { DrillSession } from '../session/drill-session.js';
import { printPlain } from './print-events.js';
import { complain, sayLine, sayObject } from './say.js';

/** @param before what earlier results say. */
export const drillInLines = async (
  session: DrillSession,
  drill: Drill,
  before: string,
  json: boolean,
): Promise<void> => {
  const { view } = session.drill;
  const level = words.drill.level(drill.level);
  if (json) {
    sayObject({ type: 'drill-begun', drill: drill.id, of: view.questions.length });
  } else {
    sayLine(cleanText(words.drill.begins(drill.title, level, view.questions.length), 200));
    sayLine(cleanText(drill.briefing, 600));
    sayLine(before);
    session.follow(printPlain(() => session.state));
  }
  session.start();
  const put = (): void => {
    const { asked } = session.drill.view;
    if (asked !== null) putQuestion(asked, session, json);
  };
  put();
  for await (const typed of createInterface({ input: process.stdin })) {
    const { asked } = session.drill.view;
    if (asked === null) break;
    const choice = choiceFrom(typed, asked);
    if (choice === null) {
      complain(words.drill.noChoice(cleanText(typed, 40)));
      continue;
    }
    session.drill.answer(choice);
    tellMark(session, json);
    session.drill.goOn();
    put();
    if (session.drill.view.asked === null) break;
  }
  session.act({ act: 'quit' });
  await session.ended;
};

/** A number from 1, or the answer itself as it is kept. */
const choiceFrom = (typed: string, { choices }: DrillQuestion): string | null => {
  const text = typed.trim();
  return choices[Number(text) - 1] ?? choices.find((choice) => choice === text) ?? null;
};

const putQuestion = (question: DrillQuestion, session: DrillSession, json: boolean): void => {
  if (json) {
    const { kind, pin, line, choices } = question;
    sayObject({ type: 'question-put', kind, pin, line, ...seenAt(question), choices });
    return;
  }
  const { sight, ask, choices } = linesOfQuestion(question, session.state, words);
  sayLine('');
  sayLine(`${sight} ${ask}`);
  for (const [at, choice] of choices.entries()) sayLine(`  ${at + 1} ${choice}`);
  sayLine(words.drill.howToAnswer(choices.length));
};

const tellMark = (session: DrillSession, json: boolean): void => {
  const marked = session.drill.view.marked.at(-1);
  if (marked === undefined) return;
  const { question, answer, points } = marked;
  if (json) {
    const { kind, pin, line, best } = question;
    sayObject({ type: 'answer-marked', kind, pin, line, answer, points, best });
    return;
  }
  const [mark, why] = linesOfMark(marked, session.state, words);
  sayLine(`${mark} ${why}`);
};

/** What a trainee sees of a pin whose verdict is asked. */
const seenAt = (question: DrillQuestion): object => {
  if (question.kind !== 'verdict') return {};
  const { value, overload, standardUncertainty, expected } = question;
  return { ...(overload ? { overload } : { value, standardUncertainty }), expected };
};
