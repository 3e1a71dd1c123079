// Writes the session file: append-only, one write for each event, each line on the chain. What `append` returned
// is in the file and survives the death of this process; a batch that could not be written whole is taken back
// and may be offered again. Refuses to overwrite anything, and to go on in a file
// that someone else changed.
import { closeSync, fsyncSync, rmSync } from 'node:fs';
import { encodeEvent, firstSeq } from '../core/event-line.js';
import type { Numbered, WalkEvent } from '../core/events.js';
import { type ChainValue, chainStart, prevOf } from '../core/session-chain.js';
import type { Journal } from '../session/ports.js';
import { AskQueue } from './ask-queue.js';
import { chainStep } from './chain-step.js';
import { type DiskCalls, realDisk, syncFolderOf, writeWhole } from './disk-calls.js';
import { isSystemError, JournalError, journalErrorFrom } from './journal-error.js';
import { lockSession } from './session-lock.js';
import { openNew, SessionPlace } from './session-place.js';

/** Where the file ends. */
export interface JournalEnd {
  readonly size: number;
  readonly nextSeq: number;
  readonly chain: ChainValue;
  /** True when the last line still lacks its newline. */
  readonly unended: boolean;
  /** Bytes kept aside in torn lines at the end, which the next event must tell. */
  readonly tornBytes: number;
}

/** Something that keeps events from being written until it is mended. */
interface Trouble {
  readonly error: JournalError;
  /** Whether it was thrown already; only then is mending tried. */
  told: boolean;
  readonly mend: () => void;
}

export class JournalWriter implements Journal {
  #end: JournalEnd;
  #trouble: Trouble | undefined;
  #closed = false;
  readonly #syncs = new AskQueue(() => this.#syncOnce());

  constructor(
    readonly place: SessionPlace,
    end: JournalEnd,
  ) {
    this.#end = end;
  }

  get path(): string {
    return this.place.path;
  }

  get fingerprint(): string {
    return this.#end.chain;
  }

  /**
   * All of the events or, when it throws, none.
   * @throws JournalError when they cannot be written; while its `canRetry` is true the same batch may be
   * offered again, and what can be mended is mended first.
   * @throws TypeError for an event that does not fit its own description.
   */
  append(events: readonly WalkEvent[]): readonly Numbered[] {
    if (this.#closed) throw new JournalError('closed', this.path, 'it is closed', 'open it again');
    if (this.#trouble === undefined) this.#note(this.place.faultInFile(this.#end.size));
    if (this.#trouble !== undefined) this.#tellOrMend(this.#trouble);
    const before = this.#end;
    const written: Numbered[] = [];
    try {
      for (const event of events) {
        written.push({ ...event, seq: this.#end.nextSeq });
        this.#writeLine(event);
      }
    } catch (error) {
      this.#takeBack(before);
      throw isSystemError(error) ? journalErrorFrom(this.path, error) : error;
    }
    return written;
  }

  sync(): void {
    if (!this.#closed) this.#syncs.ask();
  }

  /** @throws JournalError when the session may not be whole on the disk. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    await this.#syncs.idle();
    try {
      if (this.#trouble === undefined) this.#note(this.place.faultInFile(this.#end.size));
      const failure = this.#trouble === undefined ? await this.#syncOnce() : undefined;
      if (failure !== undefined) throw failure;
      if (this.#trouble !== undefined) this.#trouble.mend();
      syncFolderOf(this.path);
    } catch (error) {
      throw journalErrorFrom(this.path, error);
    } finally {
      this.place.close();
    }
  }

  #writeLine(event: WalkEvent): void {
    const { size, nextSeq, chain, unended, tornBytes } = this.#end;
    if (tornBytes > 0 && !(event.type === 'session-resumed' && event.tornBytes === tornBytes)) {
      throw new TypeError(
        `the first event must be session-resumed and tell of ${tornBytes} torn bytes`,
      );
    }
    const line = encodeEvent(nextSeq, event, prevOf(chain));
    const bytes = Buffer.from(unended ? `\n${line}\n` : `${line}\n`);
    writeWhole(this.place.disk, this.place.fd, bytes);
    this.#end = {
      size: size + bytes.length,
      nextSeq: nextSeq + 1,
      chain: chainStep(chain, bytes, unended ? 1 : 0, bytes.length - 1),
      unended: false,
      tornBytes: 0,
    };
  }

  /** Cuts off what of a refused batch did reach the file. None of it was ever given out as written. */
  #takeBack(before: JournalEnd): void {
    this.#end = before;
    const { disk } = this.place;
    const mend = (): void => disk.truncate(this.place.fd, before.size);
    try {
      mend();
    } catch (error) {
      this.#trouble = { error: journalErrorFrom(this.path, error), told: true, mend };
    }
  }

  #tellOrMend(trouble: Trouble): void {
    if (!trouble.told) {
      trouble.told = true;
      throw trouble.error;
    }
    try {
      trouble.mend();
    } catch (error) {
      throw journalErrorFrom(this.path, error);
    }
    this.#trouble = undefined;
  }

  #note(error: JournalError | undefined): void {
    if (error === undefined || this.#trouble !== undefined) return;
    const mend = (): void => {
      if (!error.canRetry) throw error;
      this.place.putBack(this.#end.size, this.#syncs.idle());
    };
    this.#trouble = { error, told: false, mend };
  }

  /** Gives back what kept the lines from the disk, if anything did. */
  async #syncOnce(): Promise<JournalError | undefined> {
    const { place } = this;
    try {
      await place.disk.sync(place.fd);
    } catch (cause) {
      const error = journalErrorFrom(this.path, cause);
      this.#trouble ??= { error, told: false, mend: () => fsyncSync(place.fd) };
      return error;
    }
    this.#note(await place.faultInPlace());
    return undefined;
  }
}

/** Begins a new session file. @throws JournalError when there is one already, or none can be made. */
export const createJournal = (path: string, disk: DiskCalls = realDisk): JournalWriter => {
  const fd = openNew(path);
  try {
    const place = new SessionPlace(path, fd, lockSession(path), disk);
    syncFolderOf(path);
    return new JournalWriter(place, {
      size: 0,
      nextSeq: firstSeq,
      chain: chainStart,
      unended: false,
      tornBytes: 0,
    });
  } catch (error) {
    closeSync(fd);
    rmSync(path, { force: true });
    throw journalErrorFrom(path, error);
  }
};
