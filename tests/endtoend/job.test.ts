// Intake, triage and profiles by the built program, without a keyboard.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const typed = (...values: string[]): string => `${values.join('\n')}\n`;
const typesOf = (lines: readonly string[]): string[] =>
  lines.map((line) => (JSON.parse(line) as { type: string }).type);

describe('the job around the walk', { timeout: 120_000 }, () => {
  it('grows a profile from nothing by one good board, and finds the bad one by it', async () => {
    const folder = temporaryFolder();
    const file = (name: string): string => join(folder, name);
    const names = ['--names', 'GND,VDD,D_P,D_N,GND', '--supplies', '2', '--rows', '1'];
    const begun = await runProgram([
      ...['profile', 'new', '--out', file('p.json'), '--pins', '5'],
      ...names,
    ]);
    expect(begun.code).toBe(0);
    const walk = (values: string, ...more: string[]) =>
      runProgram(['walk', '--link', 'stdin:', '--json', ...more], { input: values });
    const good = file('good.jsonl');
    await walk(
      typed('0.2', '146', '388', '391', '0.2'),
      ...['--profile', file('p.json'), '--session', good],
    );
    const grown = await runProgram(['profile', 'grow', good, '--out', file('p2.json'), '--json']);
    expect(JSON.parse(grown.lines[0] ?? '')).toMatchObject({ boards: 1, lines: 3, of: 3 });
    const bad = await walk(
      typed('0.2', '146', '388', 'OL', 'OL', '0.2'),
      ...['--compare', good, '--session', file('bad.jsonl')],
    );
    const judged = bad.lines
      .map((line) => JSON.parse(line) as { type: string; line?: string; verdict?: string })
      .filter(({ type }) => type === 'pin-judged');
    expect(judged.findLast(({ line }) => line === 'D_P')?.verdict).toBe('normal');
    expect(judged.findLast(({ line }) => line === 'D_N')?.verdict).toBe('open');
  });

  it('keeps intake with the walk, and what is said later after it', async () => {
    const folder = temporaryFolder();
    const session = join(folder, 's.jsonl');
    const photo = join(folder, 'before.jpg');
    const intake = join(folder, 'intake.json');
    writeFileSync(photo, 'abc');
    writeFileSync(
      intake,
      JSON.stringify({
        format: 'pinwalk-intake/1',
        ticket: 'T-17',
        symptom: 'dark',
        photos: ['before.jpg'],
        observed: { lamp: 'yes' },
      }),
    );
    const { lines } = await runProgram(
      [
        ...['walk', '--link', 'stdin:', '--profile', 'demo', '--session', session, '--json'],
        ...['--intake', intake, '--symptom', 'lit, but black', '--observe', 'picture=no'],
      ],
      { input: typed('0.2') },
    );
    expect(typesOf(lines).slice(0, 6)).toEqual([
      'session-opened',
      'intake-noted',
      'photo-attached',
      'symptom-observed',
      'symptom-observed',
      'groups-proposed',
    ]);
    expect(JSON.parse(lines[1] ?? '')).toMatchObject({ ticket: 'T-17', symptom: 'lit, but black' });
    // SHA-256 of "abc": FIPS 180-4 example, as published.
    expect(JSON.parse(lines[2] ?? '').sha256).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    const later = await runProgram(['intake', session, '--data-matters', 'yes', '--json']);
    expect(typesOf(later.lines)).toEqual(['intake-noted']);
    const shown = await runProgram(['intake', session]);
    expect(shown.lines[0]).toBe('Ticket: T-17; Symptom: lit, but black; Data matters: yes');
    const observed = await runProgram(['intake', session, '--observe', 'touch=no']);
    expect(observed.lines.length).toBeGreaterThan(2);
    expect(observed.lines).toContainEqual(expect.stringMatching(/^Walk first: /u));
    expect(observed.lines.join('')).not.toContain('\u240a');
    const check = await runProgram(['check', session]);
    expect(check.code).toBe(0);
  });

  it('never begins on a real meter before the cautions are confirmed', async () => {
    const session = join(temporaryFolder(), 's.jsonl');
    const { code, stderr } = await runProgram([
      ...['walk', '--link', 'tcp://127.0.0.1:9', '--driver', 'scpi-read', '--profile', 'demo'],
      ...['--session', session],
    ]);
    expect(code).toBe(2);
    expect(stderr).toContain('--cautions-confirmed');
    expect(stderr).toContain('coin cell');
  });

  it('answers a mistyped observation with the right one', async () => {
    const { code, stderr } = await runProgram([
      ...['triage', '--profile', 'demo', '--observe', 'pictur=no'],
    ]);
    expect(code).toBe(2);
    expect(stderr).toContain('did you mean "picture"?');
  });
});
