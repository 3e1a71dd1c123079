// A file that cannot be used, with everything that is wrong with it: one line for each problem, with the remedy.
import { cleanText } from '../core/clean-text.js';
import { formatProblem, type Problem } from '../core/problems.js';

const mostShown = 20;

export class FileError extends Error {
  override readonly name = 'FileError';
  readonly lines: readonly string[];

  constructor(
    readonly path: string,
    readonly problems: readonly Problem[],
  ) {
    const lines = linesFor(path, problems);
    super(lines.join('\n'));
    this.lines = lines;
  }
}

const linesFor = (path: string, problems: readonly Problem[]): string[] => {
  const shown = cleanText(path, 300);
  const lines = problems.slice(0, mostShown).map((problem) => formatProblem(shown, problem));
  const more = problems.length - lines.length;
  return more === 0 ? lines : [...lines, `${shown}: and ${more} more; mend these first`];
};
