// The built program plays a recorded session in a real terminal. Needs tmux, as the walk's own test does.
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { hasTmux, openTerminal, type Terminal } from '../support/terminal.js';

const open: Terminal[] = [];
afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});

const file = 'recordings/sessions/loose-filter.jsonl';

const start = (columns: number, rows: number, options = ''): Terminal => {
  const terminal = openTerminal({
    columns,
    rows,
    command: `node dist/main.js replay ${file} --cues off ${options}`,
  });
  open.push(terminal);
  return terminal;
};

const lastRow = (terminal: Terminal): string => terminal.screen().at(-2) ?? '';

describe.skipIf(!hasTmux)('a replay in a terminal', { timeout: 120_000 }, () => {
  it('should play at 80 by 24 and take its keys', async () => {
    const before = readFileSync(file);
    const terminal = start(80, 24, '--from 0:12');
    await terminal.until('REPLAY');
    terminal.send('Space');
    await terminal.until('paused');
    terminal.send('n');
    const question = await terminal.until('Is the line open?');
    expect(question).toContain('n 5 note in');
    terminal.send('n');
    terminal.send('n');
    await terminal.until('LANE1_P overload ○ open');
    terminal.send('b');
    await terminal.until('note at 5: Air and an open line read alike');
    expect(lastRow(terminal).length).toBeLessThanOrEqual(80);
    terminal.send('End');
    await terminal.until('at its end');
    expect(terminal.screen().join('\n')).toContain('38 normal');
    terminal.send('Home');
    await terminal.until(/0:00\/4:\d\d/u);
    terminal.send('?');
    await terminal.until('to the next find, question or note');
    terminal.send('x');
    terminal.send('q');
    await terminal.until('rc=0');
    expect(terminal.ask('#{alternate_on}')).toBe('0');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('should go to a time that is typed, forwards and back', async () => {
    const terminal = start(80, 24);
    await terminal.until('REPLAY');
    terminal.send('Space');
    for (const time of ['3:30', '0:45']) {
      terminal.send('g');
      await terminal.until('Go to time or pin');
      terminal.send(time, 'Enter');
      await terminal.until(`${time}/`);
    }
    terminal.send('q');
    await terminal.until('rc=0');
  });

  it.each([
    [120, 40],
    [40, 10],
  ])('should fit %i by %i', async (columns, rows) => {
    const terminal = start(columns, rows, '--from 1:00 --speed 5');
    await terminal.until(/1:\d\d\/4:\d\d/u);
    for (const row of terminal.screen()) expect([...row].length).toBeLessThanOrEqual(columns);
    expect(terminal.screen().join('\n')).toContain('? keys');
    terminal.send('q');
    await terminal.until('rc=0');
  });

  it('should end on a signal and give the terminal back', async () => {
    const terminal = start(80, 24);
    await terminal.until('REPLAY');
    terminal.signal('SIGTERM');
    await terminal.until('rc=143');
    expect(terminal.ask('#{alternate_on}')).toBe('0');
  });
});
