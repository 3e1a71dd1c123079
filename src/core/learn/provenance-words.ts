// What a learned profile says of its own origin. These texts are stored in the file, in English like its format.
import type { LearnedLine, LearnedValue } from './learn-line.js';
import type { Wanted } from './refuse-boards.js';

const boardsOf = (n: number): string => `${n} good board${n === 1 ? '' : 's'}`;
const percent = (fraction: number): string => `${Number((100 * fraction).toPrecision(2))} %`;

export const howLineWasLearned = ({ by, boards, interval }: LearnedValue): string =>
  by === 'interval'
    ? `Mean of ${boardsOf(boards)}; the tolerance holds 95 % of boards with 95 % confidence`
    : `${boards === 1 ? 'One good board' : `Median of ${boardsOf(boards)}`}; the tolerance is the usual one${
        interval === null ? '' : ` (an interval from so few would be ${percent(interval)})`
      }`;

const longestBefore = 300;

export const howProfileWasLearned = (
  lines: readonly LearnedLine[],
  boards: number,
  { function: measure, polarity }: Wanted,
  before: string,
): string => {
  const learned = lines.filter(({ outcome }) => outcome !== 'kept').length;
  const own = `Expected ${measure} (${polarity}) of ${learned} lines learned from ${boardsOf(boards)}`;
  const earlier = before.startsWith('Expected ') ? before.replace(/^.*? Before: /u, '') : before;
  return `${own}. Before: ${earlier.slice(0, longestBefore)}`;
};
