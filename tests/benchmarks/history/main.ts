// How fast a shop's sessions are read for their history, beside splitting the same files into lines and parsing
// each: `npm run bench:history -- [--sessions N]`. Measures the built program.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { built } from '../shared/built.js';
import { writeSmallSessions } from './small-sessions.js';

const [{ readCases }, { tallyCases }] = (await built(
  'store/read-cases.ts',
  'core/history/tally-cases.ts',
)) as [
  typeof import('../../../src/store/read-cases.js'),
  typeof import('../../../src/core/history/tally-cases.js'),
];

const { values } = parseArgs({ options: { sessions: { type: 'string', default: '20000' } } });
const sessions = Number(values.sessions);
if (!Number.isInteger(sessions) || sessions < 1) throw new RangeError('--sessions N');

/** Seconds of this process's own time: the machine may be shared. */
const workedS = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
};

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const folder = mkdtempSync(join(tmpdir(), 'pinwalk-history-'));
try {
  const bytes = writeSmallSessions(folder, sessions);
  say(`${sessions} sessions, ${(bytes / 1e6).toFixed(0)} MB`);

  const readAll = (): void => {
    const tally = tallyCases();
    let found = 0;
    for (const one of readCases(folder)) {
      if (!('case' in one)) throw one.problem;
      found += 1;
      tally.add(one.case);
    }
    const { boards } = tally.history();
    if (found !== sessions || boards[0]?.boards !== sessions) throw new Error('not all were read');
  };
  const parseAll = (): void => {
    let lines = 0;
    for (const name of readdirSync(folder)) {
      for (const line of readFileSync(join(folder, name), 'utf8').split('\n')) {
        if (line !== '') lines += Object.keys(JSON.parse(line) as object).length;
      }
    }
    if (lines < sessions) throw new Error('nothing was parsed');
  };

  const [bare, history] = [workedS(parseAll), workedS(readAll)];
  const [bareAgain, historyAgain] = [workedS(parseAll), workedS(readAll)];
  const [leastBare, leastHistory] = [Math.min(bare, bareAgain), Math.min(history, historyAgain)];
  say(`lines split and parsed: ${(sessions / leastBare).toFixed(0)} sessions/s`);
  say(`history:                ${(sessions / leastHistory).toFixed(0)} sessions/s`);
  say(`ratio ${(leastBare / leastHistory).toFixed(2)} (over 1: history is faster)`);
  say(`memory at the end ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
