// Editing a line of text by keys.
import { cleanText } from '../core/clean-text.js';
import type { Key } from './keys/parse-keys.js';

/** Typed and pasted text, cleaned; the length is counted in characters. */
export const editText = (text: string, key: Key, longest: number): string => {
  if (key.name === 'backspace' || key.name === 'delete') return [...text].slice(0, -1).join('');
  if (key.name === 'ctrl+u') return '';
  if (key.text === '') return text;
  const added = cleanText(key.text.replace(/[\r\n\t]+/gu, ' '), longest);
  return [...(text + added)].slice(0, longest).join('');
};
