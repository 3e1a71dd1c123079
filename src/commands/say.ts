// Everything a command prints leaves through here, a line at a time: whatever a text came from, nothing in it acts on
// the terminal, and none of it passes for a line of ours.
import { cleanText, showUnsafe } from '../core/clean-text.js';
import { jsonLine } from '../core/json-line.js';

/** Code points; longer than any line of ours. */
const longestLine = 4000;

const shownLine = (line: string): string => `${cleanText(line, longestLine)}\n`;

export const sayLine = (line: string): void => void process.stdout.write(shownLine(line));

/** A document of many lines, made by a writer that cleans whatever it takes in. */
export const sayDocument = (text: string): void => void process.stdout.write(text);

export interface ManyLines {
  line(line: string): void;
  /** Writes what is still gathered. */
  end(): void;
}

const writeAt = 65_536;

/** Lines by the million, however long: gathered into large writes. */
export const sayMany = (): ManyLines => {
  let gathered = '';
  const end = (): void => {
    process.stdout.write(gathered);
    gathered = '';
  };
  return {
    line(line) {
      gathered += `${showUnsafe(line)}\n`;
      if (gathered.length >= writeAt) end();
    },
    end,
  };
};

export const ringBell = (times = 1): void => void process.stdout.write('\x07'.repeat(times));

/** A table of cells that are each clean already. */
export const sayTable = (table: string): void => table.split('\n').forEach(sayLine);

export const sayObject = (object: object): void =>
  void process.stdout.write(`${jsonLine(object)}\n`);

/** One line on stdout: text, or the same as an object. */
export const say = (json: boolean | undefined, line: string, object: object): void =>
  json === true ? sayObject(object) : sayLine(line);

/** A line beside the output: what is wrong, or what was done. */
export const complain = (line: string): void => void process.stderr.write(shownLine(line));

export interface SayOptions {
  readonly json?: boolean;
}

export type Say = (line: string, object: object) => void;

export const sayer =
  ({ json }: SayOptions): Say =>
  (line, object) =>
    say(json, line, object);
