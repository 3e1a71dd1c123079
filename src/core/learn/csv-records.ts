// Takes comma-separated text apart by RFC 4180: quoted fields, doubled quotes, line ends inside quotes, CRLF or LF.
// Refuses what the standard does not describe, with the line; guesses nothing.

export interface CsvRecord {
  /** Line of the text where the record begins, from 1. */
  readonly line: number;
  readonly fields: readonly string[];
}

export class CsvError extends Error {
  override readonly name = 'CsvError';
  constructor(
    readonly line: number,
    readonly what: string,
    readonly fix: string,
  ) {
    super(`line ${line}: ${what}; ${fix}`);
  }
}

/** An unquoted field up to a comma or line end, or a quoted one. Sticky: taken from where the last one ended. */
const plain = /[^",\r\n]*/uy;
const quotedField = /"([^"]*(?:""[^"]*)*)"/uy;
const lineEnd = /\r\n|\n|\r|$/uy;

/**
 * Every record, blank lines left out. A byte order mark at the beginning is passed over.
 *
 * @throws CsvError at the first quote that is out of place or never closed.
 * @example [...csvRecords('pin,value\n1,"0.47"\n')]; // [{ line: 1, fields: ['pin', 'value'] }, { line: 2, ... }]
 */
export function* csvRecords(text: string): Generator<CsvRecord, void> {
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  let line = 1;
  while (at < text.length) {
    const begins = line;
    const fields: string[] = [];
    for (;;) {
      const field = fieldAt(text, at, line);
      fields.push(field.value);
      line += field.lines;
      at = field.end;
      if (text[at] !== ',') break;
      at += 1;
    }
    const end = match(lineEnd, text, at);
    if (end === null) {
      const what = 'a quote stands inside a field';
      throw new CsvError(line, what, 'put the whole field in quotes and double the quotes in it');
    }
    at += end[0].length;
    line += 1;
    if (fields.length > 1 || fields[0] !== '') yield { line: begins, fields };
  }
}

interface Field {
  readonly value: string;
  readonly end: number;
  /** Line ends inside it. */
  readonly lines: number;
}

const fieldAt = (text: string, at: number, line: number): Field => {
  if (text[at] !== '"') {
    const value = match(plain, text, at)?.[0] ?? '';
    return { value, end: at + value.length, lines: 0 };
  }
  const found = match(quotedField, text, at);
  if (found === null)
    throw new CsvError(line, 'a quote is never closed', 'close it with another "');
  const [whole, inner = ''] = found;
  return {
    value: inner.replaceAll('""', '"'),
    end: at + whole.length,
    lines: whole.match(/\r\n|\n|\r/gu)?.length ?? 0,
  };
};

const match = (pattern: RegExp, text: string, at: number): RegExpExecArray | null => {
  pattern.lastIndex = at;
  return pattern.exec(text);
};
