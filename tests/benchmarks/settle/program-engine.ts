// Holds the built program against the benchmark as anyone would: files in, `rerun --json` out. Refuses an
// exit code other than 0, with the program's own last words.
import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Engine } from './engine.js';
import { readingLog } from './reading-log.js';
import { scoredEvent } from './scored-event.js';
import type { ToldAccuracy } from './walk-truth.js';

const run = promisify(execFile);
const program = fileURLToPath(new URL('../../../dist/main.js', import.meta.url));

/** The options of `rerun` for what the program is told about the meter. */
export const accuracyOptions = (told: ToldAccuracy): string[] =>
  told === null
    ? []
    : ['--accuracy', `${told.percent},${told.counts}`, '--counts', String(told.fullScaleCounts)];

export const programEngine: Engine = async (profile, inputs, { accuracy }) => {
  const folder = await mkdtemp(join(tmpdir(), 'bench-settle-'));
  try {
    const log = join(folder, 'log.jsonl');
    const profilePath = join(folder, 'profile.json');
    await writeFile(log, readingLog([...inputs]));
    await writeFile(profilePath, JSON.stringify(profile));
    const { stdout } = await run(
      process.execPath,
      [program, 'rerun', log, '--profile', profilePath, ...accuracyOptions(accuracy), '--json'],
      { maxBuffer: 2 ** 28 },
    );
    return stdout
      .split('\n')
      .filter((line) => line !== '')
      .map(scoredEvent);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};
