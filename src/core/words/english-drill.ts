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
      return question.way.length === 0
        ? `${at} is to be pressed part by part.`
        : `${at} is to be pressed. From the pin inwards: ${wayWritten(question.way)}.`;
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

/** What a verdict says of the way behind the pin. */
const meaning: Readonly<Record<string, string>> = {
  low: 'More current flows here than on a good board: something leads to ground beside the chip.',
  high: 'Less current flows here than on a good board: a part of the way is missing, or a joint has become a resistance.',
  short: 'Next to nothing lies between this line and ground.',
  open: 'The way from this pin to the chip is broken; a second touch tells it from a missed pin.',
  wobble: 'A joint that moves reads so, and so does a probe that is not held still.',
};

const whyVerdict = (
  question: Extract<DrillQuestion, { kind: 'verdict' }>,
  answer: string,
  reads: string,
  other: string,
): string => {
  const { line, best, expected, overload } = question;
  const [verdict = ''] = best;
  const called = `${line} is ${choiceOf('verdict', verdict)}`;
  if (expected === 'overload' && overload) {
    return `${called}: nothing is read here, and nothing should be. A capacitor in the way, or no way at all, reads so on every good board.`;
  }
  const seen = `${called}: it reads ${reads}; ${other}.`;
  if (verdict !== 'normal') return `${seen} ${meaning[verdict] ?? ''}`.trimEnd();
  if (answer === 'short' && typeof expected === 'object' && expected?.low === 0) {
    return `${seen} A line that is joined to ground by design should read next to nothing.`;
  }
  return answer === verdict
    ? seen
    : `${seen} It lies between the limits, so nothing is wrong as seen from this pin.`;
};

const wayWritten = (way: Extract<DrillQuestion, { kind: 'part' }>['way']): string =>
  way
    .map(({ name, is }) => (is === 'branch' ? `${name} (a branch to ground)` : name))
    .join(', then ');

const whyPart = (question: Extract<DrillQuestion, { kind: 'part' }>, answer: string): string => {
  const { along, answered, way, line } = question;
  const right =
    answered === null
      ? `In the way of ${line} lie ${along.join(', ')}; none of them answered.`
      : `${answered} lies in the way of ${line}, and pressing it brought an answer.`;
  if (along.includes(answer)) return right;
  return way.some(({ name, is }) => name === answer && is === 'branch')
    ? `${right} ${answer} is only a branch: a broken joint there leaves the way to the chip whole.`
    : `${right} ${answer} is not on this line.`;
};

const byChance = (pValue: number): string =>
  pValue < 0.001
    ? 'Chance alone does so in fewer than 1 of 1,000 tests.'
    : `Chance alone does so in about ${Math.round(1000 * pValue)} of 1,000 tests.`;

const whyFinding = ({
  part,
  finding,
  cycles,
  pValue,
}: Extract<DrillQuestion, { kind: 'finding' }>): string => {
  const found = `${choiceOf('finding', finding)}, over ${cycles} presses.`;
  const isBare = part === 'bare-board';
  switch (finding) {
    case 'loose':
    case 'cracked':
    case 'bridged':
      return isBare
        ? `${found} Bare board answers too, so it is the board that bends, and no part is shown by it.`
        : `${found} ${byChance(pValue)}`;
    case 'steady-open':
    case 'steady':
      return isBare
        ? `${found} So it is not the board that bends: a part that does answer is at fault itself.`
        : `${found} This part's joints hold, or its break is one that pressing does not close.`;
    case 'inconclusive':
      return `${found} Slips and late answers leave it open; press again with a steadier hand.`;
  }
};

const explainFor = (
  question: DrillQuestion,
  answer: string,
  reads: string,
  other: string,
): string => {
  switch (question.kind) {
    case 'verdict':
      return whyVerdict(question, answer, reads, other);
    case 'press':
      return whyPress(question);
    case 'part':
      return whyPart(question, answer);
    case 'finding':
      return whyFinding(question);
    case 'cause':
      return `${question.best[0] ?? ''}, with ${Math.round(100 * question.probability)} % after all readings and presses.`;
  }
};

export const englishDrill: DrillWords = {
  title: 'drill',
  level: (level) => ['easy', 'medium', 'hard'][level - 1] ?? String(level),
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
  leaveAgain: 'q again to leave: no result is kept',
  left: (answered, of) => `Left after ${answered} of ${of} questions; no result is kept.`,
  choose: 'answer',
  howToAnswer: (count) => `Answer with a number from 1 to ${count}.`,
  noChoice: (typed) => `"${typed}" is none of the answers`,
  unanswered: 'not answered',
  savedIn: (path) => `Result kept in ${path}.`,
};
