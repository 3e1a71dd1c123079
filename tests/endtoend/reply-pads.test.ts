// Reply pads with the built program: planned, learned from a meter, checked, and used in a walk without a key.
import { readFileSync, writeFileSync } from 'node:fs';
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

describe('pads plan', () => {
  it('should propose a resistor for each command, and say what it does and how to build it', async () => {
    const { code, lines } = await runProgram(['pads', 'plan', '--profile', 'demo']);
    expect(code).toBe(0);
    const text = lines.join('\n');
    expect(text).toMatch(
      /^open +[\d.]+ k?Ω +[\d.]+ k?Ω to [\d.]+ k?Ω +answers that the line reads/mu,
    );
    expect(text).toContain('solder one end of each resistor');
    const json = await runProgram(['pads', 'plan', '--profile', 'demo', '--json']);
    expect(objects(json.lines).filter(({ command }) => command !== undefined)).toHaveLength(7);
  });

  it('should plan for the diode test once its current is known, and ask for it before', async () => {
    const diode = ['pads', 'plan', '--profile', 'demo', '--function', 'diode'];
    const unknown = await runProgram(diode);
    expect(unknown.code).toBe(2);
    expect(unknown.stderr).toContain('read a 1 kΩ resistor');
    const known = await runProgram([...diode, '--test-current', '1', '--commands', 'open,next']);
    expect(known.code).toBe(0);
    expect(known.lines.join('\n')).toMatch(/^open .* V /mu);
  });

  it.each([
    [['pads', 'plan'], '--profile'],
    [['pads', 'plan', '--profile', 'demo', '--commands', 'open,jump'], 'there is no pad "jump"'],
    [['pads', 'learn'], '--link'],
    [['pads', 'learn', '--link', 'stdin:'], 'touched with a meter'],
  ])('should answer %j with one line that helps', async (args, says) => {
    const { code, stderr } = await runProgram(args);
    expect(code).toBe(2);
    expect(stderr).toContain(says);
  });
});

describe('walk --pads', () => {
  const padFile = (text: string): string => {
    const path = join(temporaryFolder(), 'pads.json');
    writeFileSync(path, text);
    return path;
  };
  const walk = (pads: string) =>
    runProgram(['walk', '--link', 'log:/nonexistent', '--profile', 'demo', '--pads', pads]);
  const learned = (more: object): string =>
    JSON.stringify({
      format: 'pinwalk-pads/1',
      function: 'resistance',
      learned: '2026-11-28T04:00:00.000Z',
      driver: null,
      pads: [{ command: 'open', value: 750, standardUncertainty: 0.8 }],
      ...more,
    });

  it('should refuse pads of another function, and say what to do', async () => {
    const { code, stderr } = await walk(padFile(learned({ function: 'diode' })));
    expect(code).toBe(2);
    expect(stderr).toContain('learned in diode, the walk measures resistance');
  });

  it('should refuse a file that is none, with its line', async () => {
    const { code, stderr } = await walk(padFile('{"format":"pinwalk-pads/1",\n"pads":7}'));
    expect(code).toBe(3);
    expect(stderr).toMatch(/pads\.json:2: error: pads/u);
  });
});

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
