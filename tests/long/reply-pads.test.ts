// A whole walk answered with reply pads alone, over a real pseudo-terminal and in real time: minutes.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const driver = 'stream-fields-flags';

const bench = async (args: readonly string[]): Promise<string> => {
  const serving = startProgram(['bench', ...args, '--driver', driver]);
  onTestFinished(async () => {
    serving.child.kill('SIGTERM');
    await serving.ended;
  });
  return serving.line((line) => /^(?:serial|tcp):/u.test(line));
};

const objects = (lines: readonly string[]): Record<string, unknown>[] =>
  lines.map((line) => JSON.parse(line));

/** The whole story, in real time: some minutes. */
describe('a walk of the demo board that is answered with pads alone', { timeout: 900_000 }, () => {
  it('should end by itself with each fault at the right part', async () => {
    const folder = temporaryFolder();
    const [pads, session] = [join(folder, 'pads.json'), join(folder, 'walk.jsonl')];
    const scrapBoard = await bench(['pads?seed=7', '--pty']);
    const learned = await runProgram([
      ...['pads', 'learn', '--link', scrapBoard, '--driver', driver, '--profile', 'demo'],
      ...['--pads', pads, '--json'],
    ]);
    expect(learned.code).toBe(0);
    expect(objects(learned.lines).filter(({ type }) => type === 'pad-learned')).toHaveLength(7);
    expect((await runProgram(['check', pads])).lines.join()).toContain('reply pads: resistance');

    const board = await bench([
      'story?seed=7&answers=pads&pace=steady',
      '--pty',
      '--hear',
      session,
    ]);
    const walk = await runProgram([
      ...['walk', '--link', board, '--driver', driver, '--profile', 'demo', '--pads', pads],
      ...['--press', 'each', '--session', session, '--json'],
      ...['--cautions-confirmed', '--skip-residual', 'a board of the bench'],
    ]);
    expect(walk.stderr).toContain('Session closed');
    expect(walk.code).toBe(0);

    const events = objects(readFileSync(session, 'utf8').trimEnd().split('\n'));
    const of = (type: string): Record<string, unknown>[] =>
      events.filter((event) => event.type === type);
    // No key: every act came from a pad.
    expect(of('act-taken').filter(({ act, by }) => act !== 'quit' && by !== 'pad')).toEqual([]);
    expect(of('reply-given').length).toBeGreaterThanOrEqual(4);
    const verdicts = Object.fromEntries(
      of('pin-judged').map(({ line, verdict }) => [line, verdict]),
    );
    expect(Object.entries(verdicts).filter(([, verdict]) => verdict !== 'normal')).toEqual([
      ['LANE1_P', 'open'],
      ['LANE1_N', 'open'],
      ['FRAME_SYNC', 'open'],
    ]);
    const findings = of('press-judged').map(
      ({ line, part, finding }) => `${line} ${part} ${finding}`,
    );
    expect(findings).toEqual(
      expect.arrayContaining([
        'LANE1_P FL2 loose',
        'LANE1_N FL2 loose',
        'PANEL_ON R19 cracked',
        'FRAME_SYNC R25 steady-open',
      ]),
    );
    expect(findings.filter((finding) => / (loose|cracked|bridged)$/u.test(finding))).toHaveLength(
      3,
    );
    const ranked = of('suspects-ranked').at(-1)?.suspects as { id: string; lines: string[] }[];
    const worst = (line: string): string =>
      ranked.find(({ lines }) => lines.includes(line))?.id ?? 'none';
    expect(worst('LANE1_P')).toMatch(/^FL2/u);
    expect(worst('PANEL_ON')).toMatch(/R19/u);
    expect(worst('FRAME_SYNC')).toMatch(/R25|J7 pin 35/u);

    const again = await runProgram(['rerun', session, '--from-readings', '--json']);
    const decided = (from: readonly Record<string, unknown>[]): unknown[] =>
      from
        .filter(({ type }) => /^(?:pin-|press-|reply-|act-taken)/u.test(String(type)))
        .map(({ seq: _seq, prev: _prev, ...event }) => event);
    expect(decided(objects(again.lines))).toEqual(decided(events));
  });
});
