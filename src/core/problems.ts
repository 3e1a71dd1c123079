// What is wrong with a file, where, and what to do about it: the one shape every check gives. Text that comes
// from the file itself is shown only through `quoted`.
import { cleanText } from './clean-text.js';

/** The way to a place in a JSON document: object keys and list positions (from 0), from the outside in. */
export type JsonPath = readonly (string | number)[];

export interface Problem {
  /** Left out for an error, which makes the file unusable; a warning says what will probably surprise. */
  readonly level?: 'warning';
  /** Empty for the file as a whole. */
  readonly path: JsonPath;
  /** Line in the file, from 1, once it is known. */
  readonly line?: number;
  readonly what: string;
  readonly fix: string;
}

export const isError = (problem: Problem): boolean => problem.level !== 'warning';

/** `["connector","pins",3,"line"]` as `connector.pins[3].line`. */
export const showPath = (path: JsonPath): string => {
  let shown = '';
  for (const step of path) {
    if (typeof step === 'number') shown += `[${step}]`;
    else if (/^[\w$+-]{1,40}$/u.test(step)) shown += shown === '' ? step : `.${step}`;
    else shown += `[${quoted(step)}]`;
  }
  return shown;
};

/** Words may carry what a file says beyond what `quoted` shows, such as a whole pattern. */
const longestWords = 1000;

/** One line for the terminal: `FILE:12: error: lines.D0_P.mate: what; fix`. `file` is shown as it is. */
export const formatProblem = (file: string, problem: Problem): string => {
  const place = problem.line === undefined ? file : `${file}:${problem.line}`;
  const path = problem.path.length === 0 ? '' : `${showPath(problem.path)}: `;
  const words = cleanText(`${path}${problem.what}; ${problem.fix}`, longestWords);
  return `${place}: ${problem.level ?? 'error'}: ${words}`;
};

const longestShown = 60;

/** Foreign text in quotes: cleaned, and cut at 60 characters. */
export const quoted = (text: string): string => `"${cleanText(text, longestShown)}"`;
