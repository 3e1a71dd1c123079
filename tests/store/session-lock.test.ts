import { existsSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createJournal } from '../../src/store/journal-writer.js';
import { processMark } from '../../src/store/process-mark.js';
import { resumeJournal } from '../../src/store/resume-journal.js';
import { lockSession } from '../../src/store/session-lock.js';
import { opened, temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
let path: string;
beforeEach(() => {
  folder = temporaryFolder();
  path = folder.path('s.jsonl');
});
afterEach(() => folder.remove());

const lockPath = () => `${path}.lock`;
const leave = (holder: object | string) =>
  writeFileSync(lockPath(), typeof holder === 'string' ? holder : JSON.stringify(holder));
/** Larger than any process number the platforms give. */
const nobody = 2 ** 22 + 1;

describe('two programs on one session', () => {
  it('should be one too many, and the file stay as it is', async () => {
    const first = createJournal(path);
    first.append([opened]);
    const before = readFileSync(path);
    expect(() => resumeJournal(path)).toThrow(
      expect.objectContaining({
        reason: 'in-use',
        message: `session file ${path}: another program has it open (process ${process.pid}); close that one first; if process ${process.pid} is not pinwalk, delete ${path}.lock`,
      }),
    );
    expect(readFileSync(path)).toEqual(before);
    await first.close();
    const { journal, events, notices } = resumeJournal(path);
    expect(events).toHaveLength(1);
    expect(notices).toEqual([]);
    await journal.close();
  });

  it('should be noticed by another name too', async () => {
    const first = createJournal(path);
    first.append([opened]);
    symlinkSync(path, folder.path('other-name.jsonl'));
    expect(() => resumeJournal(folder.path('other-name.jsonl'))).toThrow(/another program has it/);
    await first.close();
  });

  it('should leave no new file behind when the lock is held', () => {
    leave({ pid: process.pid, host: hostname(), mark: null });
    expect(() => createJournal(path)).toThrow(/another program has it open/);
    expect(existsSync(path)).toBe(false);
    expect(existsSync(lockPath())).toBe(true);
  });
});

describe('a lock that was left', () => {
  it.each([
    [
      'of a process that has ended',
      { pid: nobody, host: hostname(), mark: null },
      `process ${nobody}`,
    ],
    [
      'of an earlier process with a number in use',
      { pid: process.pid, host: hostname(), mark: 'an earlier boot 1' },
      `process ${process.pid}`,
    ],
  ])('%s should be taken over, in words', (_, holder, who) => {
    if (processMark(process.pid) === undefined && holder.pid === process.pid) return;
    leave(holder);
    const lock = lockSession(path);
    expect(lock.notice).toBe(`the session was left by ${who}, which has ended; it is taken over`);
    expect(JSON.parse(readFileSync(lockPath(), 'utf8'))).toMatchObject({ pid: process.pid });
    lock.release();
    expect(existsSync(lockPath())).toBe(false);
    expect(existsSync(`${lockPath()}.${process.pid}`)).toBe(false);
  });

  it('empty, by a power failure, should be taken over once it is old', () => {
    leave('');
    expect(() => lockSession(path)).toThrow(/another program is opening it; try again/);
    const long = new Date(Date.now() - 60_000);
    utimesSync(lockPath(), long, long);
    expect(lockSession(path).notice).toMatch(/left by a process, which has ended/);
  });

  it.each([
    [
      'of another machine',
      { pid: nobody, host: 'elsewhere', mark: null },
      /process \d+ on elsewhere/,
    ],
    ['of a running process', { pid: process.pid, host: hostname(), mark: null }, /has it open/],
    [
      'of a machine with a hostile name',
      { pid: 1, host: '\u001b[2J\n', mark: null },
      /^[^\p{Cc}]*$/u,
    ],
  ])('%s should be respected', (_, holder, says) => {
    leave(holder);
    expect(() => lockSession(path)).toThrow(says);
    expect(JSON.parse(readFileSync(lockPath(), 'utf8'))).toEqual(holder);
  });

  it('of someone else should survive our release', () => {
    const lock = lockSession(path);
    leave({ pid: nobody, host: hostname(), mark: null });
    lock.release();
    expect(existsSync(lockPath())).toBe(true);
  });
});
