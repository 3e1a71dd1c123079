// A shop's own notes of one good board, pin by pin, as comma-separated text with the columns pin and value, and unit
// and line if need be. Every line that cannot be used is told with its number; then nothing is imported.
import { nearestName } from '../nearest-name.js';
import { type Problem, quoted } from '../problems.js';
import type { Profile } from '../profile/profile-format.js';
import type { Board, BoardPin } from './board.js';
import { CsvError, type CsvRecord, csvRecords } from './csv-records.js';
import { readNotedValue } from './noted-value.js';
import type { Wanted } from './refuse-boards.js';

export type ImportedNotes =
  | { readonly ok: true; readonly board: Board }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const columns = ['pin', 'value', 'unit', 'line'] as const;
type Column = (typeof columns)[number];
type Places = Readonly<Partial<Record<Column, number>>>;

const mostProblems = 100;

/** @param name what the board is called in messages: its file */
export const importNotes = (
  name: string,
  text: string,
  profile: Profile,
  wanted: Wanted,
): ImportedNotes => {
  const problems: Problem[] = [];
  const pins = new Map<string, BoardPin>();
  try {
    const records = csvRecords(text);
    const header = records.next();
    const places = readHeader(header.done ? undefined : header.value, problems);
    if (places === undefined) return { ok: false, problems };
    const lines = new Map(profile.connector.pins.map(({ pin, line }) => [pin, line]));
    const seen = new Map<string, number>();
    const width = header.done ? 0 : header.value.fields.length;
    for (const record of records) {
      if (problems.length >= mostProblems) break;
      const found = readRecord(record, { places, width, lines, seen, wanted });
      if (found === null) continue;
      if ('what' in found) problems.push(found);
      else pins.set(found.pin, found);
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    problems.push({ path: [], line: error.line, what: error.what, fix: error.fix });
  }
  if (problems.length === 0 && pins.size === 0) {
    problems.push({
      path: [],
      what: 'no pin has a value',
      fix: 'note at least one, such as 1,389.6',
    });
  }
  if (problems.length > 0) return { ok: false, problems };
  const { function: measure, polarity } = wanted;
  const origin = { wallTime: null, simulated: false };
  return {
    ok: true,
    board: { name, function: measure, polarity, ...origin, pins: [...pins.values()] },
  };
};

const readHeader = (record: CsvRecord | undefined, problems: Problem[]): Places | undefined => {
  const line = record?.line ?? 1;
  const fix = 'begin with the line pin,value or pin,value,unit';
  const names = (record?.fields ?? []).map((field) => field.trim().toLowerCase());
  const refuse = (what: string, how = fix): undefined => {
    problems.push({ path: [], line, what, fix: how });
    return undefined;
  };
  if (names.length === 1 && /[;\t]/u.test(names[0] ?? '')) {
    return refuse('the columns are not divided by commas', 'save the table with commas');
  }
  const places: Partial<Record<Column, number>> = {};
  for (const column of columns) {
    const at = names.indexOf(column);
    if (at === -1) continue;
    if (names.lastIndexOf(column) !== at) return refuse(`two columns are called "${column}"`);
    places[column] = at;
  }
  const missing = (['pin', 'value'] as const).find((column) => places[column] === undefined);
  return missing === undefined ? places : refuse(`no column is called "${missing}"`);
};

interface Reading {
  readonly places: Places;
  readonly width: number;
  /** By pin, the line the profile has there. */
  readonly lines: ReadonlyMap<string, string>;
  /** By pin, the line of the text where it was noted. */
  readonly seen: Map<string, number>;
  readonly wanted: Wanted;
}

/** Null for a pin without a value: it was not measured. */
const readRecord = (
  { line, fields }: CsvRecord,
  { places, width, lines, seen, wanted }: Reading,
): BoardPin | Problem | null => {
  const wrong = (what: string, fix: string): Problem => ({ path: [], line, what, fix });
  if (fields.length !== width) {
    return wrong(
      `${fields.length} columns where the first line has ${width}`,
      'put a field with a comma in quotes, and leave no column out',
    );
  }
  const field = (column: Column): string => {
    const at = places[column];
    return at === undefined ? '' : (fields[at] ?? '').trim();
  };
  const pin = field('pin');
  const profileLine = lines.get(pin);
  if (profileLine === undefined) {
    const near = nearestName(pin, lines.keys());
    const fix = near === undefined ? 'use the names of the profile' : `did you mean "${near}"?`;
    return wrong(`the profile has no pin ${quoted(pin)}`, fix);
  }
  const noted = field('line');
  if (noted !== '' && noted !== profileLine) {
    return wrong(
      `pin ${quoted(pin)} carries ${quoted(profileLine)} in the profile, not ${quoted(noted)}`,
      'note the right pin, or change the profile',
    );
  }
  const before = seen.get(pin);
  if (before !== undefined) {
    return wrong(`pin ${quoted(pin)} is noted twice, first in line ${before}`, 'keep one of them');
  }
  seen.set(pin, line);
  const value = readNotedValue(field('value'), field('unit'), wanted.function);
  switch (value.noted) {
    case 'nothing':
      return null;
    case 'wrong':
      return wrong(`${quoted(field('value'))}: ${value.what}`, value.fix);
    case 'overload':
      return { pin, line: profileLine, value: null, standardUncertainty: null };
    case 'value':
      return { pin, line: profileLine, value: value.value, standardUncertainty: null };
  }
};
