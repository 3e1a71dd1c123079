// Turns what a zod schema found wrong into problems in plain words, each with the fix. The words are for a
// technician with a text editor: no type-system language, no pattern unless nothing better is known.
import type { z } from 'zod';
import { nearestName } from '../nearest-name.js';
import { type JsonPath, type Problem, quoted } from '../problems.js';
import { keysAllowedAt } from './allowed-keys.js';

type Issue = z.core.$ZodIssue;

/** @param value the whole document the issues were found in, as parsed. */
export const plainIssues = (
  schema: z.ZodType,
  value: unknown,
  issues: readonly Issue[],
): readonly Problem[] => issues.flatMap((issue) => explain(schema, value, [], issue));

const explain = (schema: z.ZodType, root: unknown, base: JsonPath, issue: Issue): Problem[] => {
  const path = [...base, ...(issue.path as JsonPath)];
  const found = valueAt(root, path);
  switch (issue.code) {
    case 'invalid_type':
      if (found === undefined) return [missing(path, kindInWords(issue.expected))];
      return [wrongKind(path, found, issue.expected)];
    case 'invalid_value': {
      const values = issue.values.map(String);
      if (found === undefined) return [missing(path, choiceInWords(values))];
      return [{ path, what: `${show(found)} is not known here`, fix: suggest(found, values) }];
    }
    case 'unrecognized_keys': {
      const known = keysAllowedAt(schema, path);
      return issue.keys.map((key) => ({
        path: [...path, key],
        what: `the key ${quoted(key)} is not known here`,
        fix: suggest(
          key,
          known.filter((name) => name === key || !hasKey(found, name)),
        ),
      }));
    }
    case 'too_small':
    case 'too_big':
      return [outOfBounds(path, found, issue)];
    case 'invalid_key':
      return [
        {
          path,
          what: `the name ${quoted(String(path.at(-1)))} cannot be used`,
          fix: issue.issues[0]?.message ?? 'choose another name',
        },
      ];
    case 'invalid_union':
      return explainUnion(schema, root, path, found, issue);
    case 'invalid_format':
      return [
        {
          path,
          what: `${show(found)} does not have the right form`,
          fix: issue.format === 'date' ? 'write a real date as YYYY-MM-DD' : issue.message,
        },
      ];
    default:
      return [{ path, what: `${show(found)} does not fit`, fix: issue.message }];
  }
};

type UnionIssue = Extract<Issue, { code: 'invalid_union' }>;

/** Speaks of the alternative that was most probably meant; when none stands out, names them all. */
const explainUnion = (
  schema: z.ZodType,
  root: unknown,
  path: JsonPath,
  found: unknown,
  issue: UnionIssue,
): Problem[] => {
  const options = (issue as { options?: readonly unknown[] }).options;
  if (options !== undefined && issue.errors.length === 0) {
    const names = options.map(String);
    if (found === undefined) return [missing(path, choiceInWords(names))];
    return [{ path, what: `${show(found)} is not known here`, fix: suggest(found, names) }];
  }
  const branches = issue.errors.filter((errors) => !errors.some(isWrongFromTheStart));
  const fewest = Math.min(...branches.map((errors) => errors.length));
  const closest = branches.filter((errors) => errors.length === fewest);
  if (closest.length === 1) {
    return (closest[0] ?? []).flatMap((inner) => explain(schema, root, path, inner));
  }
  const alternatives =
    closest.length > 1 ? keysAllowedAt(schema, path) : issue.errors.flatMap(beginnings);
  return [
    {
      path,
      what: `${show(found)} fits none of the forms allowed here`,
      fix: `give one of ${[...new Set(alternatives)].join(', ')}`,
    },
  ];
};

const isWrongFromTheStart = (issue: Issue): boolean =>
  issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'invalid_value');

const beginnings = (errors: readonly Issue[]): string[] =>
  errors.flatMap((issue) => {
    if (issue.code === 'invalid_type') return [kindInWords(issue.expected)];
    if (issue.code === 'invalid_value') return issue.values.map((value) => JSON.stringify(value));
    return [];
  });

const missing = (path: JsonPath, wanted: string): Problem => {
  const last = path.at(-1);
  return typeof last === 'string'
    ? { path, what: `${quoted(last)} is missing`, fix: `add ${quoted(last)}: ${wanted}` }
    : { path, what: 'a value is missing', fix: `give ${wanted}` };
};

const wrongKind = (path: JsonPath, found: unknown, expected: string): Problem => {
  const wanted = kindInWords(expected);
  const isQuotedNumber = typeof found === 'string' && found.trim() !== '' && !Number.isNaN(+found);
  const fix =
    wanted.includes('number') && isQuotedNumber
      ? `write ${+found} without quotes`
      : `put ${wanted} here`;
  return { path, what: `${show(found)} stands where ${wanted} belongs`, fix };
};

type BoundsIssue = Extract<Issue, { code: 'too_small' | 'too_big' }>;

const outOfBounds = (path: JsonPath, found: unknown, issue: BoundsIssue): Problem => {
  const bound = issue.code === 'too_small' ? issue.minimum : issue.maximum;
  const side = issue.code === 'too_small' ? 'at least' : 'at most';
  if (issue.origin === 'string') {
    const what = found === '' ? 'the text is empty' : `${show(found)} has the wrong length`;
    return { path, what, fix: `use ${side} ${bound} characters` };
  }
  if (issue.origin === 'array') {
    return { path, what: 'the list has the wrong length', fix: `give ${side} ${bound} entries` };
  }
  const open = issue.code === 'too_small' ? 'over' : 'under';
  return {
    path,
    what: `${show(found)} is out of bounds`,
    fix: `use a number ${issue.inclusive === false ? open : `of ${side}`} ${bound}`,
  };
};

const kindInWords = (expected: string): string => {
  switch (expected) {
    case 'string':
      return 'a text in quotes';
    case 'number':
      return 'a number';
    case 'int':
      return 'a whole number';
    case 'boolean':
      return 'true or false';
    case 'array':
      return 'a list in [ ]';
    case 'object':
    case 'record':
      return 'an object in { }';
    case 'null':
      return 'null';
    default:
      return expected;
  }
};

const choiceInWords = (values: readonly string[]): string =>
  values.length === 1 ? JSON.stringify(values[0]) : `one of ${listed(values)}`;

/** A choice that is empty or holds a control character is shown as JSON writes it. */
const listed = (values: readonly string[]): string =>
  values.map((value) => (/^[^\p{Cc}]+$/u.test(value) ? value : JSON.stringify(value))).join(', ');

const suggest = (found: unknown, known: readonly string[]): string => {
  const near = typeof found === 'string' ? nearestName(found, known) : undefined;
  if (near !== undefined) return `did you mean ${JSON.stringify(near)}?`;
  return known.length === 0 ? 'remove it' : `known here: ${listed(known)}`;
};

const show = (value: unknown): string => {
  if (typeof value === 'string') return quoted(value);
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
};

const hasKey = (value: unknown, key: string): boolean =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key);

const valueAt = (root: unknown, path: JsonPath): unknown => {
  let value = root;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
};
