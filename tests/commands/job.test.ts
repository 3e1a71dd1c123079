// A job from a saved walk on: rework, tests, closing, report; each adds to the file and rewrites nothing.
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { expect, test, vi } from 'vitest';
import { closeCommand } from '../../src/commands/close.js';
import { recheckCommand } from '../../src/commands/recheck.js';
import { reportCommand } from '../../src/commands/report.js';
import { reworkCommand } from '../../src/commands/rework.js';
import { testCommand } from '../../src/commands/test.js';
import type { WalkEvent } from '../../src/core/events.js';
import { checkSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { sessionBegins } from '../../src/store/session-begins.js';
import { recheckOf } from '../report/reworked-session.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const run = async (command: Command, ...args: readonly string[]): Promise<string> => {
  const printed = vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
  const quiet = vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
  try {
    await command.exitOverride().parseAsync(args, { from: 'user' });
    return printed.mock.calls.map(([text]) => String(text)).join('');
  } finally {
    printed.mockRestore();
    quiet.mockRestore();
  }
};

const walked = (recording = 'loose-filter'): string => {
  const path = join(temporaryFolder(), 'walk.jsonl');
  copyFileSync(`recordings/sessions/${recording}.jsonl`, path);
  return path;
};

const reflowed = async (): Promise<string> => {
  const path = walked();
  await run(
    reworkCommand(),
    ...[path, '--action', 'reflow', '--part', 'FL2', '--tool', 'hot-air'],
    ...['--set-point', '330', '--airflow', '30', '--seconds', '22'],
  );
  return path;
};

const eventsOf = (path: string): WalkEvent[] =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as WalkEvent);

/** A recheck of the session beside it, made at a wall time. */
const recheckBeside = async (
  path: string,
  outcome: Parameters<typeof recheckOf>[0],
  wallTime = new Date(Date.now() + 60_000).toISOString(),
): Promise<void> => {
  const [opened] = eventsOf(path);
  if (opened?.type !== 'session-opened') throw new Error('no header');
  const { seq: _seq, prev: _prev, ...header } = opened as typeof opened & Record<string, unknown>;
  const before = { verdict: 'open', overload: true, standardUncertainty: null } as const;
  const journal = createJournal(join(path, '..', 'again.jsonl'));
  const { compared } = recheckOf(outcome);
  journal.append([
    {
      ...(header as typeof opened),
      wallTime,
      pins: ['5'],
      recheck: {
        of: { file: 'walk.jsonl', begins: sessionBegins(path) ?? '', fingerprint: 'f'.repeat(64) },
        pins: [{ pin: '5', because: ['bad'], before }],
        press: [],
      },
    },
    ...(compared === null ? [] : [compared]),
  ]);
  await journal.close();
};

test('rework is added to the session, whole and on its chain', async () => {
  const path = walked();
  const before = readFileSync(path, 'utf8');
  await run(reworkCommand(), path, '--action', 'reflow', '--part', 'FL2', '--seconds', '22');
  expect(readFileSync(path, 'utf8').startsWith(before)).toBe(true);
  const problems: unknown[] = [];
  checkSession(path, (problem) => problems.push(problem));
  expect(problems).toEqual([]);
  expect(eventsOf(path).slice(-3)).toMatchObject([
    { type: 'session-resumed', work: 'record' },
    { type: 'rework-logged', action: 'reflow', part: 'FL2', seconds: 22 },
    { type: 'session-closed', reason: 'finished' },
  ]);
});

test('a part that the profile does not have is refused, and the file left alone', async () => {
  const path = walked();
  const before = readFileSync(path, 'utf8');
  const wrong = run(reworkCommand(), path, '--action', 'reflow', '--part', 'FL99');
  await expect(wrong).rejects.toThrow('the profile has no part FL99');
  expect(readFileSync(path, 'utf8')).toBe(before);
});

test('the recheck lists what it would walk and why', async () => {
  const listed = await run(recheckCommand(), await reflowed(), '--list');
  expect(listed).toContain(
    '5 LANE1_P: open; not normal before, mate of a bad line, through a reworked part, near heat',
  );
  expect(listed.split('\n').filter((line) => line.includes('must read as before'))).toHaveLength(3);
});

test.each([
  ['without a recheck', null, 'there is no recheck'],
  ['on a board that was warm', 'wait', 'warm or wet'],
  ['on a bad recheck', 'bad', 'was not good'],
] as const)(
  'a job is not closed as repaired %s, unless a reason is given',
  async (_, outcome, why) => {
    const path = await reflowed();
    if (outcome !== null) await recheckBeside(path, outcome);
    const before = readFileSync(path, 'utf8');
    await expect(run(closeCommand(), path, '--as', 'repaired')).rejects.toThrow(why);
    expect(readFileSync(path, 'utf8')).toBe(before);
    await run(closeCommand(), path, '--as', 'repaired', '--reason', 'seen to work for a day');
    expect(eventsOf(path).at(-2)).toMatchObject({
      type: 'job-closed',
      as: 'repaired',
      reason: 'seen to work for a day',
    });
  },
);

test('a recheck older than the last rework does not count', async () => {
  const path = await reflowed();
  await recheckBeside(path, 'good', '2026-02-01T00:00:00.000Z');
  await expect(run(closeCommand(), path, '--as', 'repaired')).rejects.toThrow('older than');
});

test('a job is closed as repaired on a good recheck, and the report says so', async () => {
  const path = await reflowed();
  await recheckBeside(path, 'good');
  await run(testCommand(), path, '--draw', 'as-expected', '--amperes', '0.12', '--limit', '0.5');
  await run(testCommand(), path, '--function', 'picture and touch', '--works', 'yes');
  await run(closeCommand(), path, '--as', 'repaired', '--cause', 'FL2 pad 1');
  expect(eventsOf(path).at(-2)).toMatchObject({
    type: 'job-closed',
    cause: 'FL2 pad 1',
    recheck: { file: 'again.jsonl' },
  });
  const page = await run(reportCommand(), path, '--format', 'markdown', '--out', '-');
  expect(page).toContain('**Repaired: the faults that were found read well when measured again.**');
  expect(page).toContain('Function test, picture and touch: works.');
  const csv = await run(reportCommand(), path, '--format', 'csv', '--out', '-');
  expect(csv.split('\r\n')[0]).toContain('after_verdict');
});

test('a file that is no recheck of the session is refused', async () => {
  const path = await reflowed();
  const other = walked('shifted-leaky');
  await recheckBeside(other, 'good');
  const wrong = run(reportCommand(), path, join(other, '..', 'again.jsonl'), '--out', '-');
  await expect(wrong).rejects.toThrow('is no recheck of');
});

test.each([
  [['--amperes', '0.2'], 'judge the draw'],
  [['--function', 'picture'], 'give --function and --works together'],
  [[], 'nothing to note'],
])('a test that says nothing is refused: %j', async (options, why) => {
  await expect(run(testCommand(), walked(), ...options)).rejects.toThrow(why);
});
