// A JSON document that knows on which line each of its places stands. Refuses, with line and column and in
// plain words, what is not RFC 8259 JSON, and also what JSON.parse lets pass in a hand-written file: a key given
// twice, `__proto__` as a key, numbers too large to hold, nesting deeper than any of our formats.
import { type JsonPath, quoted } from '../problems.js';

export interface JsonSource {
  readonly value: unknown;
  /** Line, from 1, where the place stands; for a place that is not there, its nearest parent's. */
  lineOf(path: JsonPath): number;
}

export class JsonError extends Error {
  override readonly name = 'JsonError';
  constructor(
    readonly line: number,
    readonly column: number,
    readonly what: string,
    readonly fix: string,
  ) {
    super(`line ${line}, column ${column}: ${what}; ${fix}`);
  }
}

/** @throws JsonError at the first place that cannot be accepted. */
export const readJson = (text: string): JsonSource => {
  const { value, place } = new Scanner(text).document();
  return {
    value,
    lineOf: (path) => {
      let here = place;
      for (const step of path) {
        const next = here.inside?.get(step);
        if (next === undefined) break;
        here = next;
      }
      return positionOf(text, here.at).line;
    },
  };
};

interface Place {
  /** Offset of the value, or of its key. */
  readonly at: number;
  readonly inside?: ReadonlyMap<string | number, Place>;
}
interface Found {
  readonly value: unknown;
  readonly place: Place;
}

const deepest = 64;
const numberForm = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const wordForm = /[\p{L}\p{N}_$.+'-]+/uy;
const words: ReadonlyMap<string, unknown> = new Map<string, unknown>([
  ['true', true],
  ['false', false],
  ['null', null],
]);

class Scanner {
  #at = 0;
  constructor(readonly text: string) {
    if (text.startsWith('\uFEFF')) this.#at = 1;
  }

  document(): Found {
    const found = this.#value(0);
    this.#skipSpace();
    if (this.#at < this.text.length) {
      this.#refuse('something follows the end of the document', 'remove it');
    }
    return found;
  }

  #value(depth: number): Found {
    this.#skipSpace();
    const at = this.#at;
    if (depth > deepest) this.#refuse('the nesting is too deep', `nest at most ${deepest} levels`);
    switch (this.text[at]) {
      case '{':
        return this.#object(at, depth);
      case '[':
        return this.#array(at, depth);
      case '"':
        return { value: this.#string(), place: { at } };
      case undefined:
        return this.#refuse('the file ends before the document does', 'add what is missing');
      default:
        return { value: this.#word(at), place: { at } };
    }
  }

  #object(at: number, depth: number): Found {
    const value: Record<string, unknown> = {};
    const inside = new Map<string, Place>();
    this.#entries('}', () => {
      this.#skipSpace();
      const keyAt = this.#at;
      if (this.text[keyAt] !== '"') this.#refuse('a key in double quotes belongs here', 'add it');
      const key = this.#string();
      if (key === '__proto__') this.#refuseAt(keyAt, '"__proto__" cannot be a key', 'rename it');
      const before = inside.get(key);
      if (before !== undefined) {
        const { line } = positionOf(this.text, before.at);
        const what = `the key ${quoted(key)} is here a second time, after line ${line}`;
        this.#refuseAt(keyAt, what, 'keep one of the two');
      }
      this.#skipSpace();
      if (this.text[this.#at] !== ':') this.#refuse('a colon belongs after the key', 'add it');
      this.#at += 1;
      const entry = this.#value(depth + 1);
      value[key] = entry.value;
      inside.set(key, { ...entry.place, at: keyAt });
    });
    return { value, place: { at, inside } };
  }

  #array(at: number, depth: number): Found {
    const value: unknown[] = [];
    const inside = new Map<number, Place>();
    this.#entries(']', () => {
      const entry = this.#value(depth + 1);
      inside.set(value.length, entry.place);
      value.push(entry.value);
    });
    return { value, place: { at, inside } };
  }

  /** Reads entries with commas between them, from the opening bracket to the closing one. */
  #entries(close: '}' | ']', entry: () => void): void {
    this.#at += 1;
    this.#skipSpace();
    if (this.text[this.#at] === close) {
      this.#at += 1;
      return;
    }
    for (;;) {
      entry();
      this.#skipSpace();
      const next = this.text[this.#at];
      if (next === close) {
        this.#at += 1;
        return;
      }
      if (next === undefined) this.#refuse(`the file ends before a closing ${close}`, 'add it');
      if (next !== ',') this.#refuse(`a comma or ${close} belongs here`, 'add it');
      const commaAt = this.#at;
      this.#at += 1;
      this.#skipSpace();
      if (this.text[this.#at] === close) {
        this.#refuseAt(commaAt, `a comma stands before the closing ${close}`, 'remove the comma');
      }
    }
  }

  #string(): string {
    const from = this.#at;
    for (let at = from + 1; at < this.text.length; at += 1) {
      const code = this.text.charCodeAt(at);
      if (code < 0x20) {
        this.#refuseAt(at, 'a text in quotes holds a line break or control character', lineBreak);
      }
      if (code === 0x5c) at += 1;
      else if (code === 0x22) {
        this.#at = at + 1;
        return this.#unescape(from);
      }
    }
    return this.#refuse('a text in quotes is not closed', 'add the closing "');
  }

  #unescape(from: number): string {
    try {
      return JSON.parse(this.text.slice(from, this.#at)) as string;
    } catch {
      return this.#refuseAt(from, 'a backslash escape in this text is not valid', doubleIt);
    }
  }

  #word(at: number): unknown {
    const word = this.#match(wordForm, at);
    if (words.has(word)) {
      this.#at = at + word.length;
      return words.get(word);
    }
    const number = this.#match(numberForm, at);
    if (number === '' || number !== word) {
      const shown =
        word === '' ? quoted(String.fromCodePoint(this.text.codePointAt(at) ?? 0)) : quoted(word);
      this.#refuse(
        `${shown} is not a value JSON knows`,
        adviceFor(word, this.text.slice(at, at + 2)),
      );
    }
    const value = Number(number);
    if (!Number.isFinite(value)) this.#refuse('the number is too large', 'write a smaller one');
    this.#at = at + number.length;
    return value;
  }

  #match(form: RegExp, at: number): string {
    form.lastIndex = at;
    return form.exec(this.text)?.[0] ?? '';
  }

  #skipSpace(): void {
    while (isSpace(this.text.charCodeAt(this.#at))) this.#at += 1;
  }

  #refuse(what: string, fix: string): never {
    return this.#refuseAt(this.#at, what, fix);
  }

  #refuseAt(at: number, what: string, fix: string): never {
    const { line, column } = positionOf(this.text, at);
    throw new JsonError(line, column, what, fix);
  }
}

const lineBreak = 'close the quotes, or write it as \\n';
const doubleIt = 'write a backslash itself as \\\\';

const adviceFor = (word: string, start: string): string => {
  if (start === '//' || start === '/*')
    return 'JSON has no comments; use a "note" where there is one';
  if (start.startsWith("'")) return 'use double quotes';
  if (/^[+.0-9-]/u.test(word)) return 'write a plain number such as 0.5 or 388';
  return 'put text in double quotes';
};

const isSpace = (code: number): boolean =>
  code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09;

const positionOf = (text: string, at: number): { line: number; column: number } => {
  let line = 1;
  let lineStart = 0;
  for (let end = text.indexOf('\n'); end !== -1 && end < at; end = text.indexOf('\n', lineStart)) {
    line += 1;
    lineStart = end + 1;
  }
  return { line, column: at - lineStart + 1 };
};
