// Real processes: stand-ins for a player and a synthesiser, which record what they were given and when.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { WalkEvent } from '../../src/core/events.js';
import { english } from '../../src/core/words/english.js';
import { type CuePlayer, type CuePlayerSetup, createCuePlayer } from '../../src/cues/cue-player.js';
import { type Start, startProcess } from '../../src/cues/process.js';
import { createSoundFolder } from '../../src/cues/sound-folder.js';
import type { Synthesiser } from '../../src/cues/synthesisers.js';
import type { SystemPlayer } from '../../src/cues/system-players.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { judged, start as walkStart } from './rehearse-player.js';

const script = (name: string): string =>
  fileURLToPath(new URL(`./stand-ins/${name}.js`, import.meta.url));

interface Line {
  readonly what: 'began' | 'alive' | 'ended' | 'rendered';
  readonly ms: number;
  readonly pid: number;
  readonly args: readonly string[];
}

let folder: string;
let log: string;
let said: string[];
let rings: number;
let cuePlayer: CuePlayer | null;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pinwalk-test-'));
  log = join(folder, 'log');
  said = [];
  rings = 0;
  cuePlayer = null;
});

afterEach(async () => {
  await cuePlayer?.close();
  rmSync(folder, { recursive: true });
});

const lines = (): Line[] =>
  existsSync(log)
    ? readFileSync(log, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
        .map((line): Line => JSON.parse(line))
    : [];
const count = (what: Line['what']): number => lines().filter((line) => line.what === what).length;

const standIn: SystemPlayer = {
  title: 'stand-in',
  command: (path) => ({ program: process.execPath, args: [script('player'), log, path] }),
};
const nowhere: SystemPlayer = {
  title: 'nowhere',
  command: (path) => ({ program: join(folder, 'no-such-player'), args: [path] }),
};
const voice: Synthesiser = {
  title: 'stand-in',
  command: (text, path, language) => ({
    program: process.execPath,
    args: [script('voice'), log, language, path, text],
  }),
};

const make = (setup: Partial<CuePlayerSetup> & Pick<CuePlayerSetup, 'mode'>): CuePlayer => {
  cuePlayer = createCuePlayer({
    words: english,
    clock: createMonotonicClock(),
    bell: () => {
      rings += 1;
    },
    says: (text) => said.push(text),
    players: [nowhere, standIn],
    synthesisers: [voice],
    makeFolder: () => createSoundFolder(folder),
    ...setup,
  });
  return cuePlayer;
};

const soon = { timeout: 40_000, interval: 10 };
const probed = () => vi.waitFor(() => expect(count('ended')).toBe(1), soon);

describe('real processes', () => {
  it('should play through the first player that works, and kill the old sound before the new one', async () => {
    const player = make({ mode: 'tones' });
    await probed();
    player.follow({ type: 'walk-realigned', t: 1, shift: 1, pin: '7', because: 'act' }, walkStart);
    await vi.waitFor(() => expect(count('began')).toBe(2), soon);
    await vi.waitFor(() => expect(count('alive')).toBeGreaterThan(8), soon);
    player.follow({ type: 'walk-freed', t: 2, reason: 'flag-hold' }, walkStart);
    await vi.waitFor(() => expect(count('ended')).toBe(2), soon);

    const all = lines();
    const [, cut, newest] = all.filter(({ what }) => what === 'began');
    const lastOf = (pid: number | undefined) => all.findLast((line) => line.pid === pid);
    expect(lastOf(cut?.pid)?.what).toBe('alive');
    expect(lastOf(newest?.pid)?.what).toBe('ended');
    expect(lastOf(cut?.pid)?.ms).toBeLessThanOrEqual(newest?.ms ?? 0);
    expect(() => process.kill(cut?.pid ?? 0, 0)).toThrow('ESRCH');
    expect([said, rings]).toEqual([[], 0]);
  });

  it('should keep its files where no other user can read them, and leave none', async () => {
    const player = make({ mode: 'speech' });
    player.follow(judged('1', 'normal', 1), walkStart);
    await vi.waitFor(() => expect(count('rendered')).toBeGreaterThan(3), soon);
    const [made] = readdirSync(folder).filter((name) => name.startsWith('pinwalk-cues-'));
    expect(statSync(join(folder, made ?? '')).mode & 0o077).toBe(0);
    expect(readdirSync(join(folder, made ?? '')).every((name) => /^\d+\.wav$/u.test(name))).toBe(
      true,
    );
    await player.close();
    expect(readdirSync(folder)).toEqual(['log']);
  });

  it('should hand a hostile name on as plain words in one argument', async () => {
    const marker = join(folder, 'marker');
    const player = make({ mode: 'speech' });
    const pin = `--version"; touch ${marker}; $(touch ${marker}) \`touch ${marker}\` [[x]] \u001b[2J`;
    player.follow(judged(pin, 'open', 1), walkStart);
    await vi.waitFor(
      () => expect(lines().some(({ args }) => args[3]?.includes('open; again'))).toBe(true),
      soon,
    );
    const rendered = lines().filter(({ what }) => what === 'rendered');
    for (const { args } of rendered) {
      expect(args).toHaveLength(4);
      expect(args[1]).toBe('en');
      expect(args[3]).toMatch(/^[A-Za-z][A-Za-z ,.:;?'-]*$/u);
    }
    expect(existsSync(marker)).toBe(false);
  });

  it('should never keep the teller waiting, however slow the processes are', async () => {
    let starts = 0;
    const counted: Start = (command) => {
      starts += 1;
      return startProcess(command);
    };
    const player = make({ mode: 'speech', start: counted });
    await vi.waitFor(() => expect(count('rendered')).toBe(1), soon);
    const before = starts;
    const reading: WalkEvent = { type: 'reading-taken', t: 0, function: 'resistance', value: 4 };
    for (let i = 1; i <= 200; i += 1) {
      player.follow({ ...reading, t: i }, walkStart);
      player.follow(judged('7', 'low', i), walkStart);
    }
    // Starting a process is what takes time: of 200 moments that came at once only the newest gets one.
    expect(starts - before).toBeLessThanOrEqual(1);
  });

  it('should ring the bell where nothing plays, and say so once', async () => {
    const player = make({ mode: 'tones', players: [nowhere, nowhere] });
    player.follow(judged('7', 'normal', 1), walkStart);
    await vi.waitFor(() => expect(rings).toBe(1), soon);
    expect(said).toEqual([english.spoken.unable.noPlayer]);
  });
});

describe('startProcess', () => {
  const node = (code: string, ...args: readonly string[]) =>
    startProcess({ program: process.execPath, args: ['-e', code, ...args] });

  it('should tell a good end from a bad one, and from a program that is not there', async () => {
    expect(await node('process.exit(0)').ended).toBe(true);
    expect(await node('process.exit(3)').ended).toBe(false);
    expect(await startProcess({ program: join(folder, 'none'), args: [] }).ended).toBe(false);
    expect(await startProcess({ program: 'x', args: ['a\0b'] }).ended).toBe(false);
  });

  it('should pass arguments and environment as they are, without a shell', async () => {
    const hostile = '"; exit 1 & $(exit 1) %PATH% `exit 1` *';
    const code = `process.exit(process.argv[1] === process.env.EXPECTED ? 0 : 1)`;
    const { ended } = startProcess({
      program: process.execPath,
      args: ['-e', code, hostile],
      env: { EXPECTED: hostile },
    });
    expect(await ended).toBe(true);
  });

  it('should kill what does not end', async () => {
    const running = node('setInterval(() => undefined, 1000)');
    running.kill();
    expect(await running.ended).toBe(false);
  });
});
