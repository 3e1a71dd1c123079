// How long a day's session takes to open and to go about in, beside splitting the same file into lines and parsing
// them: `npx tsx --expose-gc tests/benchmarks/replay/main.ts [--readings N]`. Measures the built program (`npm run
// build` comes before): what runs the sources as they are makes them twice as slow.
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { built } from '../shared/built.js';
import { quantile } from '../shared/quantile.js';
import { writeLongSession } from './long-session.js';

const [{ placeAt, placeAtTime }, { byteLines }, { openRecording }] = (await built(
  'core/replay/recording.ts',
  'store/byte-lines.ts',
  'store/open-recording.ts',
)) as [
  typeof import('../../../src/core/replay/recording.js'),
  typeof import('../../../src/store/byte-lines.js'),
  typeof import('../../../src/store/open-recording.js'),
];

const { values } = parseArgs({ options: { readings: { type: 'string', default: '1400000' } } });
const readings = Number(values.readings);
if (!Number.isInteger(readings) || readings < 1) throw new RangeError('--readings N');

const seeks = 200;

/** Milliseconds of the main thread's own time where the system tells it: the machine may be shared. */
const workedMs = (): number => {
  try {
    const fields = readFileSync(`/proc/self/task/${process.pid}/stat`, 'utf8').split(') ')[1];
    const [user = 0, system = 0] = (fields ?? '').split(' ').slice(11, 13).map(Number);
    return 10 * (user + system);
  } catch {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  }
};

const timed = <T>(work: () => T): { readonly ms: number; readonly wallMs: number; result: T } => {
  const [from, fromWall] = [workedMs(), performance.now()];
  const result = work();
  return { ms: workedMs() - from, wallMs: performance.now() - fromWall, result };
};

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;

const folder = mkdtempSync(join(tmpdir(), 'pinwalk-replay-'));
try {
  const path = join(folder, 'session.jsonl');
  const events = writeLongSession(path, readings);
  say(`${events} events, ${(statSync(path).size / 1e6).toFixed(0)} MB`);

  const bare = timed(() => {
    let count = 0;
    for (const { buffer, from, to } of byteLines(path)) {
      JSON.parse(buffer.toString('utf8', from, to));
      count += 1;
    }
    return count;
  });
  say(`bare line split and JSON.parse: ${seconds(bare.ms)} (${seconds(bare.wallMs)} by the clock)`);

  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const opened = timed(() => {
    const open = openRecording(path);
    placeAt(open.recording, open.recording.count);
    return open;
  });
  const ratio = (opened.ms / bare.ms).toFixed(2);
  say(
    `open, and jump to the end: ${seconds(opened.ms)} (${seconds(opened.wallMs)}), ${ratio} times`,
  );

  globalThis.gc?.();
  const heldMb = (process.memoryUsage().heapUsed - before) / 1e6;
  const { recording, close } = opened.result;
  say(`held: ${heldMb.toFixed(1)} MB for ${recording.checkpoints.length} places`);

  const taken = Array.from({ length: seeks }, (_, n) => {
    const t = recording.endT * ((n * 0.618_034) % 1);
    return timed(() => placeAtTime(recording, t)).wallMs;
  });
  const shown = (p: number): string => `${quantile(taken, p).toFixed(1)} ms`;
  say(`seek to any time: median ${shown(0.5)}, 99th percentile ${shown(0.99)}, by the clock`);
  close();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
