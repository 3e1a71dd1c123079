// From the text of a driver or profile to its content, or to every problem in it with its line. Content is
// given only when nothing in it is an error; warnings may come with it.
import type { z } from 'zod';
import { isError, type Problem, quoted } from '../problems.js';
import { JsonError, type JsonSource, readJson } from './json-source.js';
import { plainIssues } from './plain-issues.js';

export interface DefinitionRead<T> {
  readonly content: T | undefined;
  readonly problems: readonly Problem[];
}

export interface DefinitionKind<T> {
  /** What one of these is called in a sentence. */
  readonly word: string;
  /** The format this version reads, such as `pinwalk-profile/1`. */
  readonly format: string;
  readonly schema: z.ZodType<T>;
  /** What the schema cannot say. */
  readonly check: (content: T) => readonly Problem[];
}

export const readDefinition = <T>(kind: DefinitionKind<T>, text: string): DefinitionRead<T> => {
  let source: JsonSource;
  try {
    source = readJson(text);
  } catch (error) {
    if (!(error instanceof JsonError)) throw error;
    const { line, column, what, fix } = error;
    return refused([{ path: [], line, what: `column ${column}: ${what}`, fix }]);
  }
  const located = (problems: readonly Problem[]): readonly Problem[] =>
    problems
      .map((problem) => ({ ...problem, line: source.lineOf(problem.path) }))
      .sort((a, b) => a.line - b.line);

  const foreign = foreignFormat(kind, source.value);
  if (foreign !== undefined) return refused(located([foreign]));
  const read = kind.schema.safeParse(source.value);
  if (!read.success) {
    return refused(located(plainIssues(kind.schema, source.value, read.error.issues)));
  }
  const problems = located(kind.check(read.data));
  return problems.some(isError) ? refused(problems) : { content: read.data, problems };
};

const refused = (problems: readonly Problem[]): DefinitionRead<never> => ({
  content: undefined,
  problems,
});

/** A file of another kind or version is answered with that alone: its other differences are no slips. */
const foreignFormat = (
  kind: { readonly word: string; readonly format: string },
  value: unknown,
): Problem | undefined => {
  const { word, format } = kind;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return {
      path: [],
      what: `a ${word} is one object in { }`,
      fix: `begin with {"format":"${format}"`,
    };
  }
  const found = (value as { format?: unknown }).format;
  if (found === format || typeof found !== 'string') return undefined;
  const [family, version = ''] = found.split('/');
  const [ownFamily, ownVersion = ''] = format.split('/');
  if (family === ownFamily && Number(version) > Number(ownVersion)) {
    return {
      path: ['format'],
      what: `this ${word} is in format ${quoted(found)}, this version of pinwalk reads "${format}"`,
      fix: 'use a newer pinwalk',
    };
  }
  return {
    path: ['format'],
    what: `${quoted(found)} is not the format of a ${word}`,
    fix: `a ${word} has "format": "${format}"`,
  };
};
