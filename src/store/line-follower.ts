// Follows the lines of a session file one by one and says of each whether it is sound: a whole event, in its
// place in the numbering, on the chain. Knows a torn line that was kept aside, because the resumed session
// says how many bytes that were. Whatever else is not sound is a problem with the number of its line.
import { type DecodedLine, EventLineError, firstSeq } from '../core/event-line.js';
import type { Numbered } from '../core/events.js';
import { isError, type Problem, showPath } from '../core/problems.js';
import { checkProfile } from '../core/profile/check-profile.js';
import type { Profile } from '../core/profile/profile-format.js';
import { type ChainValue, chainStart, prevOf } from '../core/session-chain.js';
import type { ByteLine } from './byte-lines.js';
import { chainStep } from './chain-step.js';
import { EventLines } from './event-lines.js';

export interface SessionEnd {
  readonly lines: number;
  /** Bytes read. */
  readonly size: number;
  readonly events: number;
  /** Of the events, those of a type this version does not know. */
  readonly others: number;
  readonly nextSeq: number;
  /** Time of the last event, in seconds. */
  readonly lastT: number;
  /** Over every line, a torn one included; undefined where it was not computed or broke. */
  readonly chain: ChainValue | undefined;
  /** Bytes of an unfinished event at the end of the file; 0 when there is none. */
  readonly tornBytes: number;
  readonly tornLine: number | undefined;
  /** True when the last line has no newline, whether whole or torn. */
  readonly unended: boolean;
}

interface TornLines {
  readonly line: number;
  readonly from: number;
  to: number;
}

/** A line whose `prev` does not fit: it or the one before was changed, and the next line will tell which. */
interface Fork {
  readonly line: number;
  /** The last event before; torn lines may lie between. */
  readonly lineBefore: number;
  /** The chain value before the next line, had this one's `prev` not been changed. */
  unchanged: ChainValue;
}

const restore = 'use a copy from before; what comes after this line cannot be proven';

export class LineFollower {
  readonly #eventLines = new EventLines();
  #line = 0;
  #offset = 0;
  #events = 0;
  #eventLine = 1;
  #others = 0;
  #nextSeq: number | undefined = firstSeq;
  #lastT = 0;
  #chain: ChainValue | undefined;
  #torn: TornLines | undefined;
  #fork: Fork | undefined;
  #unended = false;

  /** @param report may throw, to stop at the first problem. */
  constructor(
    readonly verifyChain: boolean,
    readonly report: (problem: Problem) => void,
  ) {
    this.#chain = verifyChain ? chainStart : undefined;
  }

  /** The event on the line, when it is one of a type this version knows. */
  take({ buffer, from, to, ended }: ByteLine): Numbered | undefined {
    this.#line += 1;
    const at = this.#offset;
    this.#offset += to - from + (ended ? 1 : 0);
    this.#unended = !ended;
    const decoded = this.#decode(buffer, from, to);
    if (decoded === undefined) {
      this.#noteTorn(at, at + to - from);
      if (this.#fork !== undefined) {
        this.#fork.unchanged = chainStep(this.#fork.unchanged, buffer, from, to);
      }
    } else if (decoded !== 'unsound') {
      this.#place(decoded);
      this.#checkChain(decoded, buffer, from, to);
      this.#eventLine = this.#line;
    }
    if (this.#chain !== undefined) this.#chain = chainStep(this.#chain, buffer, from, to);
    return decoded !== undefined && decoded !== 'unsound' && decoded.known
      ? decoded.event
      : undefined;
  }

  end(): SessionEnd {
    if (this.#fork !== undefined) this.#resolveFork(this.#fork, undefined);
    if (this.#events === 0) {
      const what = this.#line === 0 ? 'the file is empty' : 'there is no whole event in the file';
      this.#damage(1, what, 'nothing was recorded; delete it and begin anew');
    }
    const torn = this.#torn;
    return {
      lines: this.#line,
      size: this.#offset,
      events: this.#events,
      others: this.#others,
      nextSeq: this.#nextSeq ?? firstSeq,
      lastT: this.#lastT,
      chain: this.#chain,
      tornBytes: torn === undefined ? 0 : torn.to - torn.from,
      tornLine: torn?.line,
      unended: this.#unended,
    };
  }

  /** Undefined for a line that is no whole object, as one cut short is. */
  #decode(buffer: Buffer, from: number, to: number): DecodedLine | 'unsound' | undefined {
    try {
      return this.#eventLines.decode(buffer, from, to, this.#line);
    } catch (error) {
      if (!(error instanceof EventLineError)) throw error;
      this.#damage(this.#line, error.what, error.fix);
      return 'unsound';
    }
  }

  #noteTorn(from: number, to: number): void {
    if (this.#torn === undefined) this.#torn = { line: this.#line, from, to };
    else this.#torn.to = to;
  }

  #place({ event, known }: DecodedLine): void {
    const torn = this.#torn;
    this.#torn = undefined;
    const keptAside =
      torn !== undefined &&
      known &&
      event.type === 'session-resumed' &&
      event.tornBytes === torn.to - torn.from;
    if (torn !== undefined && !keptAside) {
      this.#damage(torn.line, 'the line is not one whole event', restore);
    } else if (this.#events === 0 && this.#line === 1 && event.type !== 'session-opened') {
      this.#damage(1, 'the session does not begin with its header', restore);
    } else if (this.#nextSeq !== undefined && event.seq !== this.#nextSeq) {
      const what = `the line has number ${event.seq} where ${this.#nextSeq} belongs: lines are missing or out of order`;
      this.#damage(this.#line, what, restore);
    }
    if (known && event.type === 'session-opened') this.#checkProfile(event.profile.content);
    this.#events += 1;
    if (!known) this.#others += 1;
    this.#nextSeq = event.seq + 1;
    this.#lastT = event.t;
  }

  /** Whoever folds the session goes by what its profile names. */
  #checkProfile(profile: Profile): void {
    const wrong = checkProfile(profile).find(isError);
    if (wrong === undefined) return;
    this.#damage(this.#line, `its profile: ${showPath(wrong.path)}: ${wrong.what}`, restore);
  }

  #checkChain(line: DecodedLine, buffer: Buffer, from: number, to: number): void {
    if (this.#fork !== undefined) this.#resolveFork(this.#fork, line.prev);
    const chain = this.#chain;
    if (chain === undefined) return;
    const { prev } = line;
    const wanted = prevOf(chain);
    if (prev === wanted) return;
    const text = buffer.toString('utf8', from, to);
    const at = text.lastIndexOf(prev);
    const mended = text.slice(0, at) + wanted + text.slice(at + prev.length);
    const unchanged = chainStep(chain, Buffer.from(mended));
    this.#fork = { line: this.#line, lineBefore: this.#eventLine, unchanged };
  }

  #resolveFork({ line, lineBefore, unchanged }: Fork, prev: string | undefined): void {
    this.#fork = undefined;
    if (prev === prevOf(unchanged)) {
      this.#damage(line, '"prev" on this line was changed after it was written', restore);
      this.#chain = unchanged;
      return;
    }
    const torn = lineBefore < line - 1 ? ', or the torn line after it,' : '';
    const mark = prev === undefined ? ` (or "prev" on line ${line})` : '';
    this.#damage(lineBefore, `this line${torn} was changed after it was written${mark}`, restore);
  }

  /** After damage nothing later can be held against the chain, and the numbering starts afresh. */
  #damage(line: number, what: string, fix: string): void {
    this.#chain = undefined;
    this.#fork = undefined;
    this.#nextSeq = undefined;
    this.report({ path: [], line, what, fix });
  }
}
