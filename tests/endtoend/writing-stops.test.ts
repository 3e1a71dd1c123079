// The session file cannot be written any more, under a walk of the built program: intake stops with a word, nothing
// told is lost, and the walk goes on at the same pin once writing works again.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Running, runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));
const isRoot = process.getuid?.() === 0;

const walkTo = (session: string): Running =>
  startProgram([
    ...['walk', '--link', 'virtual:healthy?pace=steady&rate=20'],
    ...['--profile', profile, '--session', session, '--json', '--readings'],
  ]);

const reached =
  (pin: string) =>
  (line: string): boolean => {
    const event = JSON.parse(line);
    return event.type === 'pin-reached' && event.pin === pin;
  };

/** Resolves with what was said on stderr once it fits; rejects when the program ends without. */
const complaint = (walk: Running, fits: RegExp): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = '';
    walk.child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (fits.test(said)) resolve(said);
    });
    walk.child.on('exit', () => reject(new Error(`it ended without that word; it said: ${said}`)));
  });

type Told = {
  readonly seq: number;
  readonly type: string;
  readonly pin?: string;
  readonly change?: string;
};

const stored = (path: string): Told[] =>
  readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => {
      const { prev: _prev, ...event } = JSON.parse(line);
      return event;
    });

/** The pin that was waited for is judged next; everything told is in the file, and the file is sound. */
const expectGoesOn = async (walk: Running, session: string): Promise<void> => {
  const events = (): readonly Told[] => walk.lines.map((line) => JSON.parse(line));
  await walk.line((line) => JSON.parse(line).change === 'writable');
  const back = events().findIndex(({ change }) => change === 'writable');
  const due = events().findLast(({ type }, at) => at < back && type === 'pin-reached')?.pin;
  const isNext = (line: string): boolean => {
    const { seq, type } = JSON.parse(line);
    return type === 'pin-judged' && seq > (events()[back]?.seq ?? 0);
  };
  expect(JSON.parse(await walk.line(isNext)).pin).toBe(due);
  walk.child.kill('SIGTERM');
  const { code, stderr } = await walk.ended;
  expect(code).toBe(0);
  expect(stderr).toContain('Session file written again.');
  expect(stored(session)).toEqual(events());
  expect((await runProgram(['check', session])).code).toBe(0);
};

describe('a session file that cannot be written', { timeout: 120_000 }, () => {
  it('should be gone on with at the same pin when the disk was full and has room again', async ({
    skip,
  }) => {
    const disk = join(temporaryFolder(), 'disk');
    mkdirSync(disk);
    const mounts =
      isRoot && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk]).status === 0;
    if (!mounts) skip('needs to mount a small disk');
    onTestFinished(() => void spawnSync('umount', ['-l', disk]));
    const session = join(disk, 's.jsonl');
    const walk = walkTo(session);
    await walk.line(reached('2'));
    const full = complaint(walk, /the disk is full; free some space, then go on/u);
    spawnSync('dd', ['if=/dev/zero', `of=${join(disk, 'filler')}`, 'bs=1k']);
    await full;
    expect(stored(session)).toHaveLength(walk.lines.length);
    rmSync(join(disk, 'filler'));
    await expectGoesOn(walk, session);
  });

  it('should be put back whole when it was removed under the walk', async () => {
    const session = join(temporaryFolder(), 's.jsonl');
    const walk = walkTo(session);
    await walk.line(reached('2'));
    const gone = complaint(
      walk,
      /deleted (?:or moved away )?while it was being written; going on puts it back whole/u,
    );
    rmSync(session);
    await gone;
    await expectGoesOn(walk, session);
  });

  it('should let only one program write', async () => {
    const session = join(temporaryFolder(), 's.jsonl');
    const walk = walkTo(session);
    await walk.line(reached('2'));
    const second = await runProgram(['walk', '--resume', session, '--json']);
    expect(second.code).toBe(5);
    expect(second.lines).toEqual([]);
    expect(second.stderr).toMatch(/^pinwalk: session file .*s\.jsonl: /u);
    const note = await runProgram(['intake', session, '--ticket', 'T1']);
    expect(note.code).toBe(5);
    walk.child.kill('SIGTERM');
    expect((await walk.ended).code).toBe(0);
    expect((await runProgram(['check', session])).code).toBe(0);
  });

  it.each([
    [
      'a folder that is not there',
      (folder: string) => join(folder, 'none/s.jsonl'),
      /make the folder/u,
    ],
    ['a device', () => '/dev/full', /already, and none is ever overwritten/u],
    [
      'a file that is there',
      (folder: string) => join(folder, 'kept.txt'),
      /none is ever overwritten/u,
    ],
    ['a folder', (folder: string) => folder, /this is a folder; give the name of a file/u],
  ])('should refuse %s with 5 before anything is read', async (_, place, says) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'kept.txt'), 'mine');
    const walk = await walkTo(place(folder)).ended;
    expect(walk.code).toBe(5);
    expect(walk.stderr).toMatch(says);
    expect(walk.stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(readFileSync(join(folder, 'kept.txt'), 'utf8')).toBe('mine');
  });

  it('should refuse a folder that can only be read with 5', async ({ skip }) => {
    const folder = join(temporaryFolder(), 'locked');
    mkdirSync(folder);
    chmodSync(folder, 0o555);
    if (isRoot) {
      // The superuser may write anywhere, but not on a disk that can only be read.
      const mounts = spawnSync('mount', ['-t', 'tmpfs', '-o', 'ro', 'tmpfs', folder]).status === 0;
      if (!mounts) skip('needs to mount a disk that can only be read');
      onTestFinished(() => void spawnSync('umount', ['-l', folder]));
    }
    const walk = await walkTo(join(folder, 's.jsonl')).ended;
    expect(walk.code).toBe(5);
    expect(walk.stderr).toMatch(/can only be read|permission is refused/u);
    expect(existsSync(join(folder, 's.jsonl'))).toBe(false);
  });
});
