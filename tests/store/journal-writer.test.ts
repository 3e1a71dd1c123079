import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { realDisk } from '../../src/store/disk-calls.js';
import { readSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { opened, reading, resumed, sample, temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const linesOf = (path: string) => readFileSync(path, 'utf8').split('\n').slice(0, -1);

describe('a new session file', () => {
  it('should hold one line for each event, numbered from 0', async () => {
    const path = folder.path('s.jsonl');
    const journal = createJournal(path);
    const numbered = [...journal.append(sample.slice(0, 2)), ...journal.append(sample.slice(2))];
    await journal.close();
    expect(numbered).toEqual(sample.map((event, seq) => ({ ...event, seq })));
    expect([...readSession(path)]).toEqual(numbered);
    expect(linesOf(path)).toHaveLength(sample.length);
  });

  it('should carry the chain, computed here from the bytes alone', async () => {
    const path = folder.path('s.jsonl');
    const journal = createJournal(path);
    journal.append(sample);
    let value = Buffer.alloc(32);
    for (const line of linesOf(path)) {
      expect(JSON.parse(line).prev).toBe(value.toString('hex').slice(0, 16));
      value = createHash('sha256').update(value).update(line).digest();
    }
    expect(journal.fingerprint).toBe(value.toString('hex'));
    await journal.close();
  });

  it('should be written with one call for each event', async () => {
    const calls: string[] = [];
    const write = (fd: number, bytes: Uint8Array, offset: number) => {
      calls.push(Buffer.from(bytes).toString('utf8'));
      return realDisk.write(fd, bytes, offset);
    };
    const path = folder.path('s.jsonl');
    const journal = createJournal(path, { ...realDisk, write });
    journal.append(sample);
    await journal.close();
    expect(calls).toEqual(linesOf(path).map((line) => `${line}\n`));
  });

  it('should have each event in the file when append returns', async () => {
    const path = folder.path('s.jsonl');
    const journal = createJournal(path);
    for (const [index, event] of sample.entries()) {
      journal.append([event]);
      expect([...readSession(path)]).toHaveLength(index + 1);
    }
    await journal.close();
  });

  it('should join what the disk writes in pieces', async () => {
    const path = folder.path('s.jsonl');
    const write = (fd: number, bytes: Uint8Array, offset: number) =>
      realDisk.write(fd, bytes.subarray(0, offset + 7), offset);
    const journal = createJournal(path, { ...realDisk, write });
    journal.append(sample);
    await journal.close();
    expect([...readSession(path)]).toEqual(sample.map((event, seq) => ({ seq, ...event })));
  });

  it('should take nothing of a batch in which one event is not sound', async () => {
    const path = folder.path('s.jsonl');
    const journal = createJournal(path);
    journal.append([opened]);
    const before = readFileSync(path, 'utf8');
    const broken = { ...reading(2), value: Number.NaN };
    expect(() => journal.append([reading(1), broken])).toThrow(TypeError);
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(journal.append([reading(1)])).toEqual([{ seq: 1, ...reading(1) }]);
    await journal.close();
    expect([...readSession(path)]).toHaveLength(2);
  });

  it('should be of no use once closed, and bear closing twice', async () => {
    const path = folder.path('s.jsonl');
    const journal = createJournal(path);
    journal.append(sample);
    await journal.close();
    await journal.close();
    expect(() => journal.append([reading(9)])).toThrow(
      expect.objectContaining({ reason: 'closed', canRetry: false }),
    );
    journal.sync();
    expect(existsSync(`${path}.lock`)).toBe(false);
  });

  it('should accept session-resumed with any count where nothing is torn', async () => {
    const journal = createJournal(folder.path('s.jsonl'));
    journal.append([opened, resumed(1, 0)]);
    await journal.close();
    expect([...readSession(folder.path('s.jsonl'))]).toHaveLength(2);
  });
});

describe('the path of a new session file', () => {
  it.each<[string, string, (path: string) => void, string, RegExp]>([
    ['a file', 'x', (path) => writeFileSync(path, 'kept'), 'exists', /none is ever overwritten/],
    ['a folder', 'x', (path) => mkdirSync(path), 'not-a-file', /this is a folder/],
    ['nothing, in no folder', 'a/b', () => undefined, 'no-folder', /make the folder first/],
    [
      'nothing, under a file',
      'f/b',
      () => writeFileSync(folder.path('f'), ''),
      'no-folder',
      /part of the path is a file/,
    ],
    ['a name without end', 'x'.repeat(300), () => undefined, 'no-folder', /too long/],
  ])('should be refused in one line where there is %s', (_, name, prepare, reason, says) => {
    const path = folder.path(name);
    prepare(path);
    let failure: unknown;
    try {
      createJournal(path);
    } catch (error) {
      failure = error;
    }
    expect(failure).toMatchObject({ name: 'JournalError', reason, path });
    expect(String(failure)).toMatch(says);
    expect(String(failure)).not.toContain('\n');
    if (reason === 'exists') expect(readFileSync(path, 'utf8')).toBe('kept');
    expect(existsSync(`${path}.lock`)).toBe(false);
  });
});

describe('asking for the disk', () => {
  it('should never keep the caller waiting, and cover everything with few syncs', async () => {
    let running = 0;
    let syncs = 0;
    const finish: (() => void)[] = [];
    const sync = () => {
      running += 1;
      syncs += 1;
      expect(running).toBe(1);
      return new Promise<void>((resolve) => {
        finish.push(() => {
          running -= 1;
          resolve();
        });
      });
    };
    const journal = createJournal(folder.path('s.jsonl'), { ...realDisk, sync });
    journal.append([opened]);
    for (let at = 1; at <= 50; at += 1) {
      journal.append([reading(at)]);
      journal.sync();
    }
    expect(syncs).toBe(1);
    let open = true;
    const closed = journal.close().finally(() => {
      open = false;
    });
    while (open) {
      finish.shift()?.();
      await new Promise((resolve) => setImmediate(resolve));
    }
    await closed;
    // The first, one for all that asked meanwhile, and the last at closing.
    expect(syncs).toBe(3);
  });

  it('should tell of a failed sync at the next event, and go on once the disk does', async () => {
    let fails = true;
    const sync = (fd: number) =>
      fails
        ? Promise.reject(Object.assign(new Error('bad sector'), { code: 'EIO' }))
        : realDisk.sync(fd);
    const path = folder.path('s.jsonl');
    const journal = createJournal(path, { ...realDisk, sync });
    journal.append([opened]);
    journal.sync();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(() => journal.append([reading(1)])).toThrow(/the disk reported an error \(EIO\)/);
    fails = false;
    expect(journal.append([reading(1)])).toHaveLength(1);
    await journal.close();
    expect([...readSession(path)]).toHaveLength(2);
  });

  it('should fail the closing when the last sync fails', async () => {
    const sync = () => Promise.reject(Object.assign(new Error('bad sector'), { code: 'EIO' }));
    const journal = createJournal(folder.path('s.jsonl'), { ...realDisk, sync });
    journal.append([opened]);
    await expect(journal.close()).rejects.toThrow(/the disk reported an error \(EIO\)/);
    expect(existsSync(folder.path('s.jsonl.lock'))).toBe(false);
  });
});
