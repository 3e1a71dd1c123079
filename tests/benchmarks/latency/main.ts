// Time from a line's last byte to its event, at fifty readings a second over a pseudo-terminal: on stdout beside a
// program that only splits lines and prints them, and in the session file with and without the screen. Ratios and
// differences in one run: `npm run bench:latency [-- --readings N --rounds N]`. Measures the built program.
import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readSync, rmSync, watch } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { outsideCi } from '../../support/outside-ci.js';
import { quantile } from '../shared/quantile.js';
import { textTable } from '../shared/text-table.js';
import { openFarEnd } from './far-end.js';

const { values } = parseArgs({
  options: {
    readings: { type: 'string', default: '600' },
    rounds: { type: 'string', default: '3' },
  },
});
const [readings, rounds] = [Number(values.readings), Number(values.rounds)];

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const program = here('../../../dist/main.js');
const everyMs = 20;
const patienceMs = 30_000;
/** Readings left out at the beginning: code is compiled then. */
const warmUp = 100;

interface Subject {
  readonly name: string;
  /** @param heard call once for every reading that has come through. */
  start(port: string, folder: string, heard: () => void): ChildProcess;
}

const walk = (port: string, session: string): string[] => [
  ...[program, 'walk', '--link', `serial:${port}`, '--driver', 'stream-value-unit'],
  ...['--profile', 'demo', '--no-ground-check', '--session', session],
  ...['--cautions-confirmed', '--skip-residual', 'no board, a benchmark', '--no-intake'],
];

const countIn = (child: ChildProcess, mark: string, heard: () => void): ChildProcess => {
  let rest = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    const lines = (rest + chunk.toString('latin1')).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line.includes(mark)) heard();
  });
  return child;
};

/** Counts readings as they appear in a file that may not be there yet. */
const countInFile = (folder: string, name: string, heard: () => void): void => {
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
  closers.push(() => {
    watcher.close();
    if (fd !== null) closeSync(fd);
  });
};
const closers: (() => void)[] = [];

const subjects: readonly Subject[] = [
  {
    name: 'bare serialport, parser-readline, console',
    start: (port, _, heard) =>
      countIn(spawn(process.execPath, [here('bare-reader.mjs'), port]), 'Ohm', heard),
  },
  {
    name: 'walk --json, on stdout',
    start: (port, folder, heard) =>
      countIn(
        spawn(process.execPath, [...walk(port, join(folder, 's.jsonl')), '--json', '--readings']),
        '"reading-taken"',
        heard,
      ),
  },
  {
    name: 'walk --json, in the file',
    start: (port, folder, heard) => {
      countInFile(folder, 's.jsonl', heard);
      return spawn(process.execPath, [...walk(port, join(folder, 's.jsonl')), '--json'], {
        stdio: 'ignore',
      });
    },
  },
  {
    name: 'walk on a screen of 80 by 24, in the file',
    start: (port, folder, heard) => {
      countInFile(folder, 's.jsonl', heard);
      return spawn(
        'python3',
        [
          ...[here('../../support/pty-run.py'), '80', '24', process.execPath],
          ...walk(port, join(folder, 's.jsonl')),
          ...['--cues', 'off'],
        ],
        {
          stdio: ['pipe', 'ignore', 'ignore'],
          env: { ...outsideCi, TERM: 'xterm-256color' },
        },
      );
    },
  },
];

/** A reading that creeps as one under a probe does, so that the walk has its work with it. */
const valueAt = (n: number): string => {
  const phase = n % 100;
  if (phase < 20) return '     OL MOhm';
  return `  ${(380 + 60 * Math.exp(-(phase - 20) / 15) + (n % 7) / 10).toFixed(1)} Ohm`;
};

const measure = async (subject: Subject): Promise<number[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-latency-'));
  const port = join(folder, 'meter');
  const far = await openFarEnd(port);
  const sent: number[] = [];
  const taken: number[] = [];
  let [hears, measuring] = [false, false];
  const child = subject.start(port, folder, () => {
    hears = true;
    const at = measuring ? sent[taken.length] : undefined;
    if (at !== undefined) taken.push(performance.now() - at);
  });
  const ended = new Promise((resolve) => child.once('close', resolve));
  try {
    // What is sent to a port that nobody has opened yet is lost: lines go out until one comes through.
    for (const until = performance.now() + patienceMs; !hears && performance.now() < until; ) {
      far.send(`${valueAt(0)}\r\n`);
      await wait(100);
    }
    await wait(1000);
    measuring = true;
    const begin = performance.now();
    for (let n = 0; n < readings; n += 1) {
      await wait(Math.max(0, begin + n * everyMs - performance.now()));
      sent.push(performance.now());
      far.send(`${valueAt(n)}\r\n`);
    }
    await wait(500);
  } finally {
    for (const close of closers.splice(0)) close();
    child.kill('SIGKILL');
    child.stdin?.destroy();
    await far.close();
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
  if (taken.length < readings * 0.98) {
    throw new Error(`${subject.name}: only ${taken.length} of ${readings} readings came through`);
  }
  return taken.slice(warmUp);
};

const all = new Map<string, number[]>(subjects.map(({ name }) => [name, []]));
for (let round = 0; round < rounds; round += 1) {
  for (const subject of subjects) all.get(subject.name)?.push(...(await measure(subject)));
}
const ms = (value: number): string => `${value.toFixed(2)} ms`;
const rows = [...all].map(([name, taken]) => [
  name,
  ms(quantile(taken, 0.5)),
  ms(quantile(taken, 0.99)),
  String(taken.length),
]);
process.stdout.write(`${textTable([['', 'median', '99th', 'readings'], ...rows])}\n`);
const medianOf = (at: number): number => quantile([...all.values()][at] ?? [], 0.5);
process.stdout.write(
  `walk over bare, median: ${ms(medianOf(1) - medianOf(0))} (asked for: 2 ms)\n`,
);
process.stdout.write(`with the screen over without, median: ${ms(medianOf(3) - medianOf(2))}\n`);
