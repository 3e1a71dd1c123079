import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FileError } from '../../src/store/file-error.js';
import { checkSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { openLaterWork } from '../../src/store/later-work.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { note, opened } from './sample-session.js';

const tenMinutesOn = { wallTime: '2026-01-31T09:25:30.000Z', zone: 'Etc/UTC' };

const stored = async (...more: Parameters<ReturnType<typeof createJournal>['append']>[0]) => {
  const path = join(temporaryFolder(), 'session.jsonl');
  const journal = createJournal(path);
  journal.append([opened, ...more]);
  await journal.close();
  return path;
};

const linesOf = (path: string) =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

const clockFrom = (start: number) => {
  let t = start;
  const pass = (seconds: number): void => {
    t += seconds;
  };
  return { now: () => t, pass, wall: tenMinutesOn };
};

test('adds at the end, on the chain, at the time that has passed, and closes as before', async () => {
  const path = await stored({ type: 'session-closed', t: 12, reason: 'finished' });
  const before = readFileSync(path, 'utf8');
  const clock = clockFrom(77);
  const work = openLaterWork(path, clock);
  clock.pass(2.5);
  work.append([note(work.now(), 'cleaned')]);
  await work.close();
  expect(readFileSync(path, 'utf8').startsWith(before)).toBe(true);
  const added = linesOf(path).slice(2);
  expect(added.map(({ type, t }) => [type, t])).toEqual([
    ['session-resumed', 600],
    ['act-taken', 602.5],
    ['session-closed', 602.5],
  ]);
  expect(added[0]).toMatchObject({ work: 'record', tornBytes: 0 });
  expect(added[2]).toMatchObject({ reason: 'finished' });
  const problems: unknown[] = [];
  expect(checkSession(path, (problem) => problems.push(problem)).chain).toBe(work.fingerprint);
  expect(problems).toEqual([]);
});

test('a session that was never closed was left', async () => {
  const path = await stored();
  const work = openLaterWork(path, clockFrom(0));
  work.append([note(work.now(), 'seen')]);
  await work.close();
  expect(linesOf(path).at(-1)).toMatchObject({ type: 'session-closed', reason: 'left' });
});

test('writes nothing where nothing is added', async () => {
  const path = await stored();
  const before = readFileSync(path, 'utf8');
  await openLaterWork(path, clockFrom(0)).close();
  expect(readFileSync(path, 'utf8')).toBe(before);
});

test('a second sitting goes on from the first', async () => {
  const path = await stored({ type: 'session-closed', t: 12, reason: 'finished' });
  for (const text of ['one', 'two']) {
    const work = openLaterWork(path, clockFrom(0));
    work.append([note(work.now(), text)]);
    await work.close();
  }
  const times = linesOf(path).map(({ t }) => t as number);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(linesOf(path).filter(({ type }) => type === 'session-resumed')).toHaveLength(2);
});

test('a file that is no session is refused', () => {
  const path = join(temporaryFolder(), 'gone.jsonl');
  expect(() => openLaterWork(path, clockFrom(0))).toThrow(FileError);
});
