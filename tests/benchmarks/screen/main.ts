// How long the screen takes to come beside one line drawn by Ink, and what it costs while it runs: share of a core
// beside the same walk without a screen, and bytes a frame. `npm run bench:screen [-- --starts N --seconds N]`.
// Measures the built program on pseudo-terminals.
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { outsideCi } from '../../support/outside-ci.js';
import { quantile } from '../shared/quantile.js';
import { textTable } from '../shared/text-table.js';

const { values } = parseArgs({
  options: {
    starts: { type: 'string', default: '8' },
    seconds: { type: 'string', default: '20' },
  },
});
const [starts, seconds] = [Number(values.starts), Number(values.seconds)];

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pinwalk-screen-'));
let sessions = 0;
const walk = (rate: number): string[] => {
  sessions += 1;
  return [
    ...[here('../../../dist/main.js'), 'walk', '--cues', 'off'],
    ...['--link', `virtual:healthy?rate=${rate}`, '--session', join(folder, `${sessions}.jsonl`)],
  ];
};

const run = (size: readonly [number, number], args: readonly string[]) =>
  spawn(
    'python3',
    [here('../../support/pty-run.py'), ...size.map(String), process.execPath, ...args],
    {
      env: { ...outsideCi, TERM: 'xterm-256color', COLORTERM: '' },
    },
  );

const end = async (child: ChildProcessWithoutNullStreams, pid: number): Promise<void> => {
  process.kill(pid, 'SIGKILL');
  await once(child, 'close');
};

/** Milliseconds until the text is on the terminal. */
const timeTo = async (args: readonly string[], text: string): Promise<number> => {
  const from = performance.now();
  const child = run([80, 24], args);
  const pid = Number(await once(child.stderr, 'data'));
  let seen = '';
  for await (const chunk of child.stdout) {
    seen += String(chunk);
    if (seen.includes(text)) break;
  }
  const took = performance.now() - from;
  await end(child, pid);
  return took;
};

const ticksMs = 10;
/** Milliseconds of processor time a process has used, all its threads. */
const usedMs = (pid: number): number => {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return ticksMs * (Number(fields[11]) + Number(fields[12]));
};

const settleMs = 4000;

interface Cost {
  readonly share: number;
  readonly frames: number;
  readonly bytes: number;
}

const costOf = async (size: readonly [number, number], args: readonly string[]): Promise<Cost> => {
  const child = run(size, args);
  const pid = Number(await once(child.stderr, 'data'));
  let [frames, bytes] = [0, 0];
  child.stdout.on('data', (chunk: Buffer) => {
    frames += 1;
    bytes += chunk.length;
  });
  await wait(settleMs);
  [frames, bytes] = [0, 0];
  const [from, used] = [performance.now(), usedMs(pid)];
  await wait(seconds * 1000);
  const share = (usedMs(pid) - used) / (performance.now() - from);
  const cost = { share, frames, bytes };
  await end(child, pid);
  return cost;
};

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

try {
  const bare: number[] = [];
  const screen: number[] = [];
  for (let n = 0; n < starts; n += 1) {
    bare.push(await timeTo([here('bare-ink.mjs')], 'ready'));
    screen.push(await timeTo(walk(10), 'Display connector'));
  }
  const [bareMs, screenMs] = [quantile(bare, 0.5), quantile(screen, 0.5)];
  process.stdout.write(
    `start to first screen: ${screenMs.toFixed(0)} ms, bare Ink ${bareMs.toFixed(0)} ms, ` +
      `ratio ${(screenMs / bareMs).toFixed(2)} (asked for: 1.5)\n`,
  );
  const rows: string[][] = [];
  for (const rate of [10, 50]) {
    const none = await costOf([80, 24], [...walk(rate), '--plain']);
    for (const size of [
      [80, 24],
      [120, 40],
    ] as const) {
      const { share, frames, bytes } = await costOf(size, walk(rate));
      rows.push([
        `${size.join(' by ')}, ${rate} readings/s`,
        percent(share),
        percent(share - none.share),
        (frames / seconds).toFixed(1),
        (bytes / Math.max(1, frames)).toFixed(0),
      ]);
    }
  }
  const head = ['', 'of a core', 'of it the screen', 'writes/s', 'bytes each'];
  process.stdout.write(`${textTable([head, ...rows])}\n`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
