// Hours of readings as fast as the program takes them: `walk --link log:` with everything behind it, from the
// decisions to the session file and the events on stdout.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readingLog } from '../../benchmarks/settle/reading-log.js';
import { programPath } from '../../support/run-program.js';
import { processState } from '../shared/process-state.js';
import { longWalk } from './long-walk.js';
import type { Sample } from './watched.js';

const everyReadings = 5000;

export interface Accelerated {
  readonly samples: readonly Sample[];
  readonly readings: number;
  readonly sessionBytes: number;
  readonly tookS: number;
}

/** @throws Error when the walk does not end by itself with everything taken. */
export const soakAccelerated = async (folder: string, hours: number): Promise<Accelerated> => {
  const { profile, inputs } = longWalk(hours * 3600 * 50);
  const wanted = inputs.filter(({ kind }) => kind === 'reading').length;
  const [log, profileFile, session] = ['log.jsonl', 'profile.json', 'session.jsonl'].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  writeFileSync(log, readingLog(inputs));
  writeFileSync(profileFile, JSON.stringify(profile));
  const child = spawn(
    process.execPath,
    [
      // Uncapped, what nobody holds any more is left lying for minutes and hides what grows.
      ...[
        '--max-old-space-size=64',
        programPath,
        'walk',
        '--link',
        `log:${log}`,
        '--log-pace',
        'fast',
        '--stay',
      ],
      ...['--profile', profileFile, '--session', session, '--json', '--readings'],
    ],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const samples: Sample[] = [];
  const begin = performance.now();
  let [readings, sampled, sampledAt, rest] = [0, 0, begin, ''];
  child.stdout.on('data', (chunk: Buffer) => {
    const lines = (rest + chunk.toString('latin1')).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line.includes('"reading-taken"')) readings += 1;
    if (readings - sampled < everyReadings || child.pid === undefined) return;
    const now = performance.now();
    const tookMs = [(now - sampledAt) / (readings - sampled)];
    samples.push({ at: readings / wanted, ...processState(child.pid), tookMs });
    [sampled, sampledAt] = [readings, now];
  });
  const [code] = (await once(child, 'close')) as [number | null];
  if (code !== 0) throw new Error(`the walk ended with ${code}`);
  if (readings !== wanted) throw new Error(`${readings} of ${wanted} readings were told`);
  const tookS = (performance.now() - begin) / 1000;
  return { samples, readings, sessionBytes: statSync(session).size, tookS };
};
