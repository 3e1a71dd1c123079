// Reply pads with the built program: planned, and refused where they do not fit.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

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
