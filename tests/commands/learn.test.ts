import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { exitCodeFor, linesFor } from '../../src/commands/failures.js';
import { learnCommand } from '../../src/commands/learn.js';
import type { WalkEvent } from '../../src/core/events.js';
import { assumedAccuracy, openSession } from '../../src/core/walk/open-session.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { board, boards, type Change, small } from '../core/learn/good-boards.js';
import { readProfile } from '../support/read-profile.js';
import { temporaryFolder } from '../support/temporary-folder.js';

let folder: string;
const at = (name: string): string => join(folder, name);

/** The session of a good board, as a walk would have left it. */
const session = async (
  name: string,
  given: ReturnType<typeof board>,
  change: Partial<Parameters<typeof openSession>[0]> = {},
): Promise<string> => {
  const path = at(name);
  const journal = createJournal(path);
  const settled = given.pins.map(
    ({ pin, line, value, standardUncertainty }): WalkEvent => ({
      type: 'pin-settled',
      t: 1,
      touch: Number(pin),
      pin,
      line,
      ...(value === null ? { overload: true } : { value }),
      standardUncertainty,
      readings: 5,
      function: 'resistance',
      from: 0,
      to: 1,
    }),
  );
  journal.append([
    openSession({
      profile: { content: small, sha256: '0'.repeat(64) },
      driver: null,
      accuracy: assumedAccuracy,
      measure: small.measure,
      link: 'stdin:',
      simulated: false,
      groundCheck: false,
      wallTime: null,
      zone: null,
      ...change,
    }),
    ...settled,
  ]);
  await journal.close();
  return path;
};

const sessions = (count: number): Promise<string[]> =>
  Promise.all(boards(count).map((one) => session(`${one.name}.jsonl`, one)));

const run = (...args: string[]): { code: number; out: string[]; err: string } => {
  const printed: string[] = [];
  const errors: string[] = [];
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed.push(String(text));
    return true;
  });
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    errors.push(String(text));
    return true;
  });
  let code = 0;
  try {
    const command = learnCommand()
      .exitOverride()
      .configureOutput({ outputError: () => undefined });
    command.parse(args, { from: 'user' });
  } catch (error) {
    code = exitCodeFor(error);
    errors.push(linesFor(error).join('\n'));
  } finally {
    stdout.mockRestore();
    stderr.mockRestore();
  }
  return { code, out: printed.join('').split('\n').slice(0, -1), err: errors.join('') };
};

beforeEach(() => {
  folder = temporaryFolder();
  writeFileSync(at('small.json'), JSON.stringify(small));
});

const profile = (): string => at('small.json');

describe('learn', () => {
  it('should write a profile that validates, named for its file, and say what the boards prove', async () => {
    const { code, out, err } = run(
      ...(await sessions(6)),
      '--profile',
      profile(),
      '--out',
      at('learned.json'),
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const read = readProfile(readFileSync(at('learned.json'), 'utf8'));
    expect(read.problems).toEqual([]);
    expect(read.content?.id).toBe('learned');
    expect(read.content?.lines.D0_P?.expect?.resistance).toMatchObject({ from: { boards: 6 } });
    expect(out).toContainEqual(
      expect.stringMatching(/^D0_P: 38\d\.?\d* Ω ± [\d.]+ % \(6 boards\)$/u),
    );
    expect(out).toContain('AC: overload (6 boards)');
    expect(out.at(-2)).toMatch(
      /^Limits hold 95 % of good boards with 95 % confidence \(6 boards, 4\.4/u,
    );
    expect(out.at(-1)).toBe(`Profile learned written to ${at('learned.json')}`);
  });

  it('should say how little two boards prove, and write nothing unasked', async () => {
    const { code, out } = run(...(await sessions(2)), '--profile', profile());
    expect(code).toBe(0);
    expect(out).toContainEqual(
      expect.stringMatching(/^RESET: 3\.92\d? kΩ ± 8 % \(2 boards, usual tolerance\)$/u),
    );
    expect(out.at(-2)).toBe(
      '2 boards prove little: what they span is sure (95 %) to hold only 2.5 % of good boards, and limits from them alone would lie 36.5 standard deviations away. Limits keep the usual tolerance; 5 boards or more give limits of their own.',
    );
    expect(out.at(-1)).toBe('Nothing written; give --out FILE to write the profile.');
  });

  it('should tell one JSON object a line', async () => {
    const warm = await session('warm.jsonl', board('warm', 1.07));
    const { out } = run(...(await sessions(4)), warm, '--profile', profile(), '--json');
    const told = out.map((line) => JSON.parse(line) as { type: string });
    expect(told.map(({ type }) => type)).toEqual([
      ...Array(8).fill('line-learned'),
      'board-flagged',
      'profile-learned',
    ]);
    expect(told[0]).toMatchObject({ line: 'D0_P', outcome: 'value', boards: 4, by: 'usual' });
    expect(told[8]).toMatchObject({ board: 'warm.jsonl', because: 'all-lines-shifted' });
    expect(told[9]).toMatchObject({
      id: 'small',
      file: null,
      boards: ['b1.jsonl', 'b2.jsonl', 'b3.jsonl', 'b4.jsonl'],
      profile: { format: 'pinwalk-profile/1' },
    });
  });

  it('should learn from notes, alone or beside sessions', async () => {
    writeFileSync(at('notes.csv'), '\uFEFFpin,value\r\n2,388\r\n6,3k92\r\n9,OL\r\n');
    const alone = run('--csv', at('notes.csv'), '--profile', profile());
    expect(alone.out).toContain('D0_P: 388 Ω ± 8 % (1 board, usual tolerance)');
    expect(alone.out).toContain('D0_N: not read, left as it was');
    expect(alone.out.at(-2)).toMatch(/^One board does not tell how good boards differ/u);
    const both = run(...(await sessions(2)), '--csv', at('notes.csv'), '--profile', profile());
    expect(both.out).toContainEqual(
      expect.stringMatching(/^RESET: 3\.92\d? kΩ ± 8 % \(3 boards, usual tolerance\)$/u),
    );
  });

  it('should tell values and pins that stand apart', async () => {
    const change: Change = { '6': 3300, '8': null };
    const odd = await session('odd.jsonl', board('odd', 1.001, change));
    const { out } = run(...(await sessions(5)), odd, '--profile', profile());
    expect(out).toContain('  RESET: odd.jsonl reads 3.3 kΩ, far from the other boards');
    expect(out).toContain(
      'VCC: pin 8 of odd.jsonl reads overload, more than another pin of the line; left out',
    );
  });

  it('should learn another function beside the own one when asked', async () => {
    writeFileSync(at('diode.csv'), 'pin,value,unit\n2,470,mV\n3,0.472,V\n');
    const args = ['--csv', at('diode.csv'), '--profile', profile(), '--out', at('both.json')];
    expect(run(...args, '--function', 'diode', '--polarity', 'black-walks').code).toBe(0);
    const { content } = readProfile(readFileSync(at('both.json'), 'utf8'));
    expect(content?.lines.D0_P?.expect?.diode).toMatchObject({
      nominal: 0.47,
      polarity: 'black-walks',
    });
    expect(content?.lines.D1_P?.expect?.resistance).toEqual({ nominal: 500, tolerance: 0.08 });
  });
});

describe('learn refuses', () => {
  it('to be asked for nothing, and without a profile', async () => {
    expect(run('--profile', profile())).toMatchObject({ code: 2, out: [] });
    expect(run('a.jsonl').code).toBe(2);
  });

  it('sessions of another function or polarity', async () => {
    const [good = ''] = await sessions(1);
    const diode = await session('d.jsonl', board('d', 1.01), {
      measure: { function: 'diode', polarity: 'red-walks' },
    });
    const black = await session('k.jsonl', board('k', 1.02), {
      measure: { function: 'resistance', polarity: 'black-walks' },
    });
    const { code, err } = run(good, diode, black, '--profile', profile(), '--out', at('x.json'));
    expect(code).toBe(3);
    expect(err.split('\n')).toEqual([
      'd.jsonl: measured diode, but resistance is to be learned; leave it out, or give --function diode',
      'k.jsonl: measured with black-walks, but red-walks is to be learned; leave it out, or give --polarity black-walks',
    ]);
    expect(() => readFileSync(at('x.json'))).toThrow('ENOENT');
  });

  it('what is no session, is empty, damaged or not there', async () => {
    expect(run(profile(), '--profile', profile())).toMatchObject({
      code: 3,
      err: `${profile()} is a profile; name a saved session`,
    });
    expect(run(at('none.jsonl'), '--profile', profile()).code).toBe(3);
    const [good = ''] = await sessions(1);
    const lines = readFileSync(good, 'utf8').split('\n');
    writeFileSync(good, lines.toSpliced(2, 1).join('\n'));
    expect(run(good, '--profile', profile()).code).toBe(3);
  });

  it('a board given twice, by its name or by its content', async () => {
    const [good = ''] = await sessions(1);
    expect(run(good, good, '--profile', profile())).toMatchObject({
      code: 2,
      err: 'b1.jsonl is given twice',
    });
    writeFileSync(at('copy.jsonl'), readFileSync(good));
    expect(run(good, at('copy.jsonl'), '--profile', profile())).toMatchObject({
      code: 3,
      err: 'copy.jsonl: holds the same readings as b1.jsonl; a board counts once',
    });
  });

  it('bad notes, each line by its number', async () => {
    writeFileSync(at('notes.csv'), 'pin,value\n2,388\n3,"3,9"\n44,1\n');
    const { code, err } = run('--csv', at('notes.csv'), '--profile', profile());
    expect(code).toBe(3);
    expect(err.split('\n')).toEqual([
      `${at('notes.csv')}:3: error: "3,9": a decimal comma reads two ways; write a point, such as 0.47`,
      `${at('notes.csv')}:4: error: the profile has no pin "44"; did you mean "4"?`,
    ]);
  });

  it('to replace a file, unless forced; a session or what it learns from, never', async () => {
    const good = await sessions(3);
    writeFileSync(at('there.json'), 'precious');
    const args = [...good, '--profile', profile(), '--out'];
    const refused = run(...args, at('there.json'));
    expect(refused.code).toBe(5);
    expect(refused.err).toContain('is there already; give another name, or --force');
    expect(readFileSync(at('there.json'), 'utf8')).toBe('precious');
    expect(run(...args, at('there.json'), '--force').code).toBe(0);
    expect(readProfile(readFileSync(at('there.json'), 'utf8')).content?.id).toBe('there');

    const [first = ''] = good;
    const before = readFileSync(first, 'utf8');
    expect(run(...args, first, '--force').code).toBe(2);
    const other = await session('other.jsonl', board('other'));
    expect(run(...args, other, '--force').code).toBe(5);
    symlinkSync(first, at('link.json'));
    expect(run(...args, at('link.json'), '--force').code).toBe(5);
    expect(readFileSync(first, 'utf8')).toBe(before);
    expect(run(...args, at('no-such-folder/x.json')).code).toBe(5);
  });
});
