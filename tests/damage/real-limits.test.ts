// The same refusals as the operating system itself gives them, to a program of its own where that is needed.
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { opened, reading, temporaryFolder } from '../store/sample-session.js';
import { startChild } from './start-child.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const runs = (command: string, ...args: string[]): boolean => spawnSync(command, args).status === 0;
const isRoot = process.getuid?.() === 0;

it.skipIf(!runs('prlimit', '--version'))(
  'should stop at a limit on file size and go on once it is raised',
  { timeout: 120_000 },
  async () => {
    const path = folder.path('limited.jsonl');
    const child = startChild([path, '120', '10']);
    await child.heard((word) => word === '5');
    // Held still, or the file is past the limit before there is one.
    child.process.kill('SIGSTOP');
    const limit = statSync(path).size + 500;
    execFileSync('prlimit', ['--pid', `${child.process.pid}`, `--fsize=${limit}:`]);
    child.process.kill('SIGCONT');
    const refusal = await child.heard((word) => word.startsWith('!'));
    expect(refusal).toMatch(/^! full session file .*may not grow any larger; raise the limit/);
    expect(statSync(path).size).toBeLessThanOrEqual(limit);
    // It tries again on its own: what of a try came to the file is taken back at once, and may be seen until then.
    await expect.poll(() => checkFile(path).problems, { timeout: 20_000 }).toEqual([]);
    execFileSync('prlimit', ['--pid', `${child.process.pid}`, '--fsize=unlimited:']);
    await child.heard((word) => word === 'done');
    await child.ended;
    const numbers = child.said.filter((word) => /^\d+$/u.test(word)).map(Number);
    expect(numbers).toEqual(Array.from({ length: 120 }, (_, nth) => nth));
    expect([...readSession(path)].map(({ seq }) => seq)).toEqual(numbers);
    expect(checkFile(path).problems).toEqual([]);
  },
);

describe('a disk of its own', () => {
  const place = join(tmpdir(), `pinwalk-tiny-disk-${process.pid}`);
  const mounted = (): boolean => {
    mkdirSync(place, { recursive: true });
    return isRoot && runs('mount', '-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', place);
  };
  afterEach(() => {
    spawnSync('umount', ['-l', place]);
    rmSync(place, { recursive: true, force: true });
  });

  it('should be written to its last byte, and on when there is room', async ({ skip }) => {
    if (!mounted()) skip('needs to mount a small disk');
    writeFileSync(join(place, 'filler'), Buffer.alloc(32 * 1024));
    const path = join(place, 's.jsonl');
    const journal = createJournal(path);
    journal.append([opened]);
    let written = 1;
    let refusals = 0;
    while (written < 400) {
      try {
        written += journal.append([reading(written)]).length;
      } catch (error) {
        expect(error).toMatchObject({ reason: 'full' });
        expect(checkFile(path)).toMatchObject({ problems: [], fingerprint: journal.fingerprint });
        expect([...readSession(path)]).toHaveLength(written);
        rmSync(join(place, 'filler'));
        refusals += 1;
      }
    }
    await journal.close();
    expect(refusals).toBe(1);
    expect([...readSession(path)].map(({ seq }) => seq)).toEqual(
      Array.from({ length: 400 }, (_, nth) => nth),
    );
  });

  it('should be refused in words when it can only be read', ({ skip }) => {
    if (!mounted()) skip('needs to mount a small disk');
    execFileSync('mount', ['-o', 'remount,ro', place]);
    expect(() => createJournal(join(place, 's.jsonl'))).toThrow(
      /the disk can only be read; save on another disk, with --session/,
    );
  });
});

it('should refuse a folder that may not be written to', { timeout: 120_000 }, async ({ skip }) => {
  const inside = folder.path('locked');
  mkdirSync(inside);
  chmodSync(inside, 0o555);
  // The superuser may write anywhere: this right is laid down first.
  const asOthers = isRoot ? ['setpriv', '--bounding-set=-dac_override'] : [];
  if (isRoot && !runs('setpriv', '--version')) skip('the superuser may write anywhere');
  const child = startChild([join(inside, 's.jsonl'), '3', '0'], asOthers);
  await child.ended;
  expect(child.said).toEqual([
    expect.stringMatching(
      /^! not-permitted .*permission is refused; make it writable, or save elsewhere/,
    ),
  ]);
  expect(readdirSync(inside)).toEqual([]);
});
