// Titles and notes hold nothing that cannot be seen or that would act on a terminal. They are cleaned wherever
// they are shown; this says so to whoever writes the file.
import { cleanText } from '../clean-text.js';
import type { JsonPath, Problem } from '../problems.js';

export const checkTexts = (value: unknown, path: JsonPath = []): readonly Problem[] => {
  if (typeof value === 'string') return value === '' ? [] : checkText(value, path);
  if (Array.isArray(value))
    return value.flatMap((item, index) => checkTexts(item, [...path, index]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => checkTexts(item, [...path, key]));
};

const checkText = (text: string, path: JsonPath): Problem[] =>
  cleanText(text, text.length) === text
    ? []
    : [
        {
          level: 'warning',
          path,
          what: 'the text holds characters that cannot be seen or that act on a terminal',
          fix: 'type it anew, without what was pasted in',
        },
      ];
