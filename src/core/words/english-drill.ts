// The English of the drill.
import type { DrillQuestion } from '../drill/question.js';
import type { DrillWords } from './drill-words.js';

const choices: Readonly<Record<string, string>> = {
  'verdict:normal': 'normal',
  'verdict:low': 'low',
  'verdict:high': 'high',
  'verdict:short': 'short',
  'verdict:open': 'open',
  'verdict:wobble': 'does not hold still',
  'press:press': 'press the parts along it',
  'press:go-on': 'go on: pressing tells nothing here',
  'finding:loose': 'reading returns under pressure: loose joint',
  'finding:cracked': 'reading goes under pressure: cracked joint',
  'finding:bridged': 'reads short under pressure: bridged',
  'finding:steady-open': 'stays open, pressed or not',
  'finding:steady': 'reads alike, pressed or not',
  'finding:inconclusive': 'cannot be told',
};

const place = (part: string | null): string =>
  part === null ? 'the part' : part === 'bare-board' ? 'bare board' : part;

const choiceOf = (kind: DrillQuestion['kind'], choice: string): string =>
  choices[`${kind}:${choice}`] ?? choice;

const askFor = (question: DrillQuestion): string => {
  switch (question.kind) {
    case 'verdict':
      return 'What is this line?';
    case 'press':
      return 'What next?';
    case 'part':
      return 'Which part do you press first?';
    case 'finding':
      return `What did pressing ${place(question.part)} show?`;
    case 'cause':
      return 'Where is the fault?';
  }
};

const sightOf = (question: DrillQuestion, reads: string, other: string): string => {
  const at = `Pin ${question.pin}, ${question.line}`;
  switch (question.kind) {
    case 'verdict':
      return `${at} reads ${reads}; ${other}.`;
    case 'press':
      return `${at} is ${choiceOf('verdict', question.verdict)}.`;
    case 'part':
      return `${at} is to be pressed part by part.`;
    case 'finding':
      return `${at}: ${place(question.part)} was pressed ${question.cycles} times. Pressed it reads ${reads}, released ${other}.`;
    case 'cause':
      return 'The walk is done and every finding is in.';
  }
};

const whyPress = (question: Extract<DrillQuestion, { kind: 'press' }>): string =>
  question.best.includes('press')
    ? 'A line without a steady reading may hang on a joint that pressing closes.'
    : 'A steady reading that is too low leaks somewhere; no loose joint makes it, so pressing tells nothing.';

const explainFor = (question: DrillQuestion, reads: string, other: string): string => {
  switch (question.kind) {
    case 'verdict': {
      const verdict = choiceOf('verdict', question.best[0] ?? '');
      const why =
        question.expected === 'overload' && question.overload
          ? 'nothing is read here, and nothing should be'
          : `it reads ${reads}; ${other}`;
      return `${question.line} is ${verdict}: ${why}.`;
    }
    case 'press':
      return whyPress(question);
    case 'part':
      return question.answered === null
        ? `Along this line lie ${question.along.join(', ')}; none of them answered.`
        : `${question.answered} lies along this line, and pressing it brought an answer.`;
    case 'finding':
      return `${choiceOf('finding', question.finding)}; p = ${question.pValue.toPrecision(2)} over ${question.cycles} presses.`;
    case 'cause':
      return `${question.best[0] ?? ''}, with ${Math.round(100 * question.probability)} % after all readings and presses.`;
  }
};

export const englishDrill: DrillWords = {
  title: 'drill',
  level: (level) => ['easy', 'middling', 'hard'][level - 1] ?? String(level),
  begins: (title, level, questions) => `${title} (${level}, ${questions} questions)`,
  ask: (question, reads, other) => [sightOf(question, reads, other), askFor(question)],
  choice: choiceOf,
  marked: (points) => (points === 1 ? 'Right.' : points === 0 ? 'No.' : 'Half right.'),
  explain: explainFor,
  score: (points, of) => `${points} of ${of} points`,
  earlier: (times, best, of) =>
    `Done ${times === 1 ? 'once' : `${times} times`} before; best so far ${best} of ${of}.`,
  firstTime: 'Done for the first time.',
  progress: (nth, of, points) =>
    `question ${nth} of ${of}, ${points} ${points === '1' ? 'point' : 'points'}`,
  begin: 'begin',
  goOn: 'go on',
  skipAhead: 'to the question',
  pause: 'pause',
  resume: 'go on',
  leave: 'leave',
  choose: 'answer',
  howToAnswer: (count) => `Answer with a number from 1 to ${count}.`,
  noChoice: (typed) => `"${typed}" is none of the answers`,
  unanswered: 'not answered',
  savedIn: (path) => `Result kept in ${path}.`,
};
