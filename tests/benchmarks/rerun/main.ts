// How long `rerun` takes over a long reading log, beside splitting the same file into lines and parsing them:
// `npx tsx --expose-gc tests/benchmarks/rerun/main.ts [--readings N] [--runs N]`. Measures the built program's modules.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { generateWalk } from '../settle/generate-walk.js';
import type { Mixture } from '../settle/mixture.js';
import { common } from '../settle/mixtures/common.js';
import { readingLog } from '../settle/reading-log.js';
import { built } from '../shared/built.js';

const [{ readLog }, { retell, toItsEnd }, { assumedAccuracy, openLog }] = (await built(
  'store/read-log.ts',
  'core/walk/rerun.ts',
  'core/walk/open-session.ts',
)) as [
  typeof import('../../../src/store/read-log.js'),
  typeof import('../../../src/core/walk/rerun.js'),
  typeof import('../../../src/core/walk/open-session.js'),
];

const { values } = parseArgs({
  options: {
    readings: { type: 'string', default: '1000000' },
    runs: { type: 'string', default: '3' },
  },
});
const readings = Number(values.readings);
const runs = Number(values.runs);
if (![readings, runs].every((count) => Number.isInteger(count) && count > 0)) {
  throw new RangeError('--readings N --runs N');
}

/** One connector all day long: as in any log, most of it is air and rest. */
const pins = 60;
const readingsPerS = 50;
const pinS = readings / readingsPerS / pins;
const mixture: Mixture = {
  ...common,
  board: { ...common.board, pins: [pins, pins] },
  hand: { ...common.hand, liftMeanS: 0.4 * pinS, marginS: [0.3 * pinS, 0.8 * pinS] },
  meter: { ...common.meter, rates: [readingsPerS], bursts: 0 },
};

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

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const megabytes = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

/** The generated walk is let go of, so that it does not weigh on what is measured. */
const writeLog = (path: string): { readonly profile: Profile; readonly lines: number } => {
  const { profile, inputs } = generateWalk(mixture, 1, 0);
  writeFileSync(path, readingLog(inputs));
  return { profile, lines: inputs.length };
};

const folder = mkdtempSync(join(tmpdir(), 'pinwalk-rerun-'));
try {
  const path = join(folder, 'log.jsonl');
  const { profile, lines } = writeLog(path);
  say(
    `${lines} lines, ${(statSync(path).size / 1e6).toFixed(0)} MB, ${profile.connector.pins.length} pins`,
  );

  const bare = (): void => {
    for (const line of readFileSync(path, 'utf8').split('\n')) if (line !== '') JSON.parse(line);
  };
  let settled = 0;
  let grown = 0;
  const again = (): void => {
    const before = megabytes();
    const opened = openLog({ content: profile, sha256: '' }, null, assumedAccuracy, 'log');
    settled = 0;
    for (const { event } of retell(opened, toItsEnd(readLog(path)), { readings: false })) {
      if (event.type !== 'pin-settled') continue;
      settled += 1;
      if (settled % 20 === 0) grown = Math.max(grown, megabytes() - before);
    }
  };
  const ratios: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    let from = workedMs();
    bare();
    const bareMs = workedMs() - from;
    from = workedMs();
    again();
    const rerunMs = workedMs() - from;
    ratios.push(bareMs / rerunMs);
    say(
      `split and parse ${(bareMs / 1000).toFixed(2)} s, rerun ${(rerunMs / 1000).toFixed(2)} s: ${(bareMs / rerunMs).toFixed(2)} of the bare rate (asked for: 0.50)`,
    );
  }
  say(
    `best ${Math.max(...ratios).toFixed(2)}; ${settled} captures told; heap grew by ${grown.toFixed(0)} MB at most`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
