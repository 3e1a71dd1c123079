// A value as one line of JSON that is safe to show: what could act on a terminal or hide is written as an escape,
// which reads back as the same text.
import { hasUnsafe, unsafeUnits } from './clean-text.js';

const escaped = (text: string): string =>
  Array.from({ length: text.length }, (_, at) => {
    const code = text.charCodeAt(at).toString(16).padStart(4, '0');
    return `\\u${code}`;
  }).join('');

/** Without a newline. */
export const jsonLine = (value: object): string => {
  const json = JSON.stringify(value);
  return hasUnsafe(json) ? json.replace(unsafeUnits, escaped) : json;
};
