// The built program drills a trainee in a real terminal. Needs tmux, as the walk's own test does.
import { afterEach, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../support/temporary-folder.js';
import { hasTmux, openTerminal, type Terminal } from '../support/terminal.js';

const open: Terminal[] = [];
afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});

const start = (columns: number, rows: number): Terminal => {
  const data = temporaryFolder();
  const command = `env XDG_DATA_HOME=${data} node dist/main.js drill loose-filter`;
  const terminal = openTerminal({ columns, rows, command });
  open.push(terminal);
  return terminal;
};

describe.skipIf(!hasTmux)('a drill in a terminal', { timeout: 120_000 }, () => {
  it('should ask at 80 by 24, take an answer by number and explain it', async () => {
    const terminal = start(80, 24);
    const briefing = await terminal.until('begin');
    expect(briefing).toContain('The demo device shows no picture after a repair.');
    expect(briefing).toContain('Done for the first time.');
    terminal.send('Enter');
    await terminal.until('question 1 of');
    terminal.send('n');
    const asked = await terminal.until('What is this line?');
    expect(asked).not.toContain('○');
    terminal.send('5');
    const explained = await terminal.until('Right.');
    expect(explained).toContain('LANE1_P is open: it reads overload');
    terminal.send('Enter');
    await terminal.until('What next?');
    terminal.send('q');
    await terminal.until('q again to leave: no result is kept');
    terminal.send('1');
    expect(await terminal.until('1-2 answer')).toContain('What next?');
    terminal.send('q');
    await terminal.until('q again to leave');
    terminal.send('q');
    expect(await terminal.until('rc=0')).toContain('Left after 1 of 17 questions');
    expect(terminal.ask('#{alternate_on}')).toBe('0');
  });

  it.each([
    [120, 40],
    [40, 10],
  ])('should fit %d by %d', async (columns, rows) => {
    const terminal = start(columns, rows);
    expect(await terminal.until('begin')).toContain('leave');
    terminal.send('Enter');
    await terminal.until('question 1 of');
    terminal.send('n');
    await terminal.until('What is this line?');
    const screen = terminal.screen();
    expect(screen.every((line) => line.length <= columns)).toBe(true);
    expect(screen.join('\n')).toContain('open');
    terminal.send('1');
    expect(await terminal.until('No.')).toContain('enter go on');
    terminal.send('q');
    terminal.send('q');
    await terminal.until('rc=0');
  });
});
