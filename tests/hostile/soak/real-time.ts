// Minutes of real time with everything running: a meter on a pseudo-terminal that talks fifty times a second, the
// link, the session file and the screen. Latency is from a line's leaving to its event in the session file.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, openSync, readSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Reading } from '../../../src/core/reading.js';
import { openFarEnd } from '../../benchmarks/latency/far-end.js';
import { programPath } from '../../support/run-program.js';
import { processState } from '../shared/process-state.js';
import { longWalk } from './long-walk.js';
import type { Sample } from './watched.js';

const everyMs = 20;
const sampleReadings = 250;

const lineFor = (reading: Reading): string => {
  if ('value' in reading) {
    const { value } = reading;
    return value < 9999 ? `  ${value.toFixed(1)} Ohm` : `  ${(value / 1000).toFixed(1)} kOhm`;
  }
  return '     OL MOhm';
};

/** Counts the readings in a session file as they are written. */
const followReadings = (folder: string, name: string, heard: () => void): (() => void) => {
  let fd: number | null = null;
  let rest = '';
  const buffer = Buffer.alloc(256 * 1024);
  const watcher = watch(folder, (_, changed) => {
    if (changed !== name) return;
    fd ??= openSync(join(folder, name), 'r');
    for (let read = readSync(fd, buffer); read > 0; read = readSync(fd, buffer)) {
      const lines = (rest + buffer.toString('latin1', 0, read)).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) if (line.includes('"reading-taken"')) heard();
    }
  });
  return () => {
    watcher.close();
    if (fd !== null) closeSync(fd);
  };
};

export interface RealTime {
  readonly samples: readonly Sample[];
  readonly sent: number;
  readonly taken: number;
}

export const soakInRealTime = async (folder: string, minutes: number): Promise<RealTime> => {
  const { profile, inputs } = longWalk(minutes * 60 * 50);
  const readings = inputs.flatMap((input) => (input.kind === 'reading' ? [input.reading] : []));
  const profileFile = join(folder, 'soak-profile.json');
  writeFileSync(profileFile, JSON.stringify(profile));
  const port = join(folder, 'meter');
  const far = await openFarEnd(port);
  const sentAt: number[] = [];
  const samples: Sample[] = [];
  let [hears, measuring, taken] = [false, false, 0];
  let tookMs: number[] = [];
  const unfollow = followReadings(folder, 'soak.jsonl', () => {
    hears = true;
    if (!measuring) return;
    tookMs.push(performance.now() - (sentAt[taken] ?? 0));
    taken += 1;
  });
  const child = spawn(
    'python3',
    [
      fileURLToPath(new URL('../../support/pty-run.py', import.meta.url)),
      ...['80', '24', process.execPath, programPath, 'walk', '--link', `serial:${port}`],
      ...['--driver', 'stream-value-unit', '--profile', profileFile, '--no-ground-check'],
      ...[
        '--no-intake',
        '--cautions-confirmed',
        '--skip-residual',
        'soak',
        '--session',
        join(folder, 'soak.jsonl'),
        '--cues',
        'off',
      ],
    ],
    {
      stdio: ['pipe', 'ignore', 'pipe'],
      env: { ...process.env, CI: '', TERM: 'xterm-256color' },
    },
  );
  const [word] = (await once(child.stderr, 'data')) as [Buffer];
  const pid = Number.parseInt(word.toString(), 10);
  const ended = once(child, 'close');
  try {
    for (let tries = 0; !hears; tries += 1) {
      if (tries > 300) throw new Error('the walk never heard the meter');
      far.send('     OL MOhm\r\n');
      await wait(100);
    }
    await wait(1000);
    measuring = true;
    const begin = performance.now();
    for (const [n, reading] of readings.entries()) {
      await wait(Math.max(0, begin + n * everyMs - performance.now()));
      sentAt.push(performance.now());
      far.send(`${lineFor(reading)}\r\n`);
      if (n % sampleReadings !== sampleReadings - 1 || tookMs.length === 0) continue;
      samples.push({ at: n / readings.length, ...processState(pid), tookMs });
      tookMs = [];
    }
    await wait(500);
  } finally {
    unfollow();
    process.kill(pid, 'SIGTERM');
    await ended;
    await far.close();
  }
  return { samples, sent: sentAt.length, taken };
};
