// What a typed line asks of the rework desk: a word and perhaps a name, number or text.
import { cleanText } from '../clean-text.js';
import type { Profile } from '../profile/profile-format.js';
import type { Place } from './heat-limits.js';
import { type ReworkAction, type ReworkTool, reworkActions, reworkTools } from './rework-events.js';

export type DeskLine =
  | { readonly line: 'confirm' | 'stop' | 'quit' }
  | { readonly line: 'heat'; readonly place: Place | null }
  | { readonly line: 'place'; readonly place: Place }
  | { readonly line: 'tool'; readonly tool: ReworkTool }
  | { readonly line: 'set-point' | 'airflow'; readonly number: number }
  | { readonly line: 'done'; readonly action: ReworkAction; readonly place: Place | null }
  | { readonly line: 'note'; readonly text: string };

/** Null where the line is not understood. */
export const parseDeskLine = (text: string, profile: Profile): DeskLine | null => {
  const [word = '', ...rest] = text.trim().split(/\s+/u);
  const said = rest.join(' ');
  switch (word) {
    case 'confirm':
    case 'stop':
    case 'quit':
      return said === '' ? { line: word } : null;
    case 'heat':
      return { line: 'heat', place: said === '' ? null : placeNamed(said, profile) };
    case 'place':
      return said === '' ? null : { line: 'place', place: placeNamed(said, profile) };
    case 'tool': {
      const tool = reworkTools.find((known) => known === said);
      return tool === undefined ? null : { line: 'tool', tool };
    }
    case 'set-point':
    case 'airflow': {
      const number = readFigure(said);
      return number === null ? null : { line: word, number };
    }
    case 'done': {
      const [first = '', ...where] = rest;
      const action = reworkActions.find((known) => known === first);
      if (action === undefined) return null;
      const place = where.length === 0 ? null : placeNamed(where.join(' '), profile);
      return { line: 'done', action, place };
    }
    case 'note':
      return said === '' ? null : { line: 'note', text: cleanText(said, longestNote) };
    default:
      return null;
  }
};

export const longestNote = 400;
const longestName = 40;

/** A part where the profile knows it, else an area by that name. */
export const placeNamed = (name: string, profile: Profile): Place => {
  const cleaned = cleanText(name.trim(), longestName);
  return Object.hasOwn(profile.parts ?? {}, cleaned) ? { part: cleaned } : { area: cleaned };
};

/** A plain positive number, or null. */
export const readFigure = (text: string): number | null => {
  const value = /^\d{1,4}(\.\d{1,2})?$/u.test(text) ? Number(text) : 0;
  return value > 0 ? value : null;
};
