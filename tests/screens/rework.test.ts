// The built rework desk in a real terminal. Needs tmux, as the walk's own test does.
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../support/temporary-folder.js';
import { hasTmux, openTerminal, type Terminal } from '../support/terminal.js';

const open: Terminal[] = [];
afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});

interface Desk {
  readonly terminal: Terminal;
  events(): readonly { readonly type: string; readonly [key: string]: unknown }[];
}

const start = (columns: number, rows: number, more = '', env = {}): Desk => {
  const session = join(temporaryFolder(), 'session.jsonl');
  copyFileSync('recordings/sessions/loose-filter.jsonl', session);
  const command = `sh -c 'echo before; exec node dist/main.js rework ${session} --cues off ${more}'`;
  const terminal = openTerminal({ columns, rows, command, env });
  open.push(terminal);
  const events: Desk['events'] = () =>
    readFileSync(session, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as ReturnType<Desk['events']>[number]);
  return { terminal, events };
};

const expectFits = (terminal: Terminal, columns: number, rows: number): void => {
  const shown = terminal.screen();
  expect(shown.filter((row) => row !== '').length).toBeLessThanOrEqual(rows);
  expect(shown.every((row) => row.length <= columns)).toBe(true);
};

const expectRestored = async (terminal: Terminal): Promise<void> => {
  expect(terminal.ask('#{alternate_on} #{cursor_flag}')).toBe('0 1');
  expect(terminal.screen().join('\n')).toContain('before');
  terminal.send('stty -a | tr -s " ;" "\\n" | grep -x -c -e icanon -e echo', 'Enter');
  await terminal.until(/^2$/mu);
};

const confirmed = 'Enter: all of this is so';

describe.skipIf(!hasTmux)('the rework desk in a terminal', { timeout: 120_000 }, () => {
  it('should time heat at 80 by 24, by keys, and give the terminal back', async () => {
    const { terminal, events } = start(80, 24);
    await terminal.until(confirmed);
    terminal.send('t');
    await terminal.until('Confirm the cautions first.');
    expect(events().some(({ type }) => type === 'heat-started')).toBe(false);
    terminal.send('Enter');
    const text = await terminal.until('heat off');
    expect(text).toContain('FL2');
    terminal.send('e', '3', '3', '0', 'Enter', 'm', 't');
    await terminal.until('▐HEAT ON▌');
    terminal.send('q');
    await terminal.until('Heat is on: stop it first.');
    terminal.send('t');
    await terminal.until(/FL2: reflowed \(hot air, 330 °C, \d/u);
    terminal.send('q');
    await terminal.until('rc=0');
    await expectRestored(terminal);
    expect(events().at(-1)?.type).toBe('session-closed');
    expect(events().find(({ type }) => type === 'rework-logged')).toMatchObject({
      ...{ action: 'reflow', part: 'FL2', tool: 'hot-air', setPoint: 330 },
    });
  });

  it.each([
    [120, 40],
    [40, 10],
  ])('should fit %d by %d, before and while heat is on', async (columns, rows) => {
    const { terminal } = start(columns, rows);
    await terminal.until(confirmed);
    expectFits(terminal, columns, rows);
    expect(terminal.screen().join('\n').includes('make the window taller')).toBe(rows < 20);
    terminal.send('Enter');
    await terminal.until('heat off');
    terminal.send('t');
    const text = await terminal.until('▐HEAT ON▌');
    expectFits(terminal, columns, rows);
    expect(text).toContain('q quit');
    expect(text).toMatch(/of 90 s\s+in\s+all/u);
    if (rows < 20) expect(text).toMatch(/▐HEAT ON▌ +\d\.\d s/u);
  });

  it('should follow every change of size and leave nothing behind', async () => {
    const { terminal } = start(80, 24);
    await terminal.until(confirmed);
    terminal.send('Enter');
    await terminal.until('heat off');
    for (const [columns, rows] of [
      [40, 10],
      [120, 40],
      [60, 20],
      [80, 24],
    ] as const) {
      terminal.resize(columns, rows);
      await terminal.until((now) => now.split('heat off').length === 2 && now.includes('q quit'));
      expectFits(terminal, columns, rows);
    }
    terminal.send('q');
    await terminal.until('rc=0');
    await expectRestored(terminal);
  });

  it('should stop the heat in its record and restore the terminal when it is killed', async () => {
    const { terminal, events } = start(80, 24);
    await terminal.until(confirmed);
    terminal.send('Enter');
    await terminal.until('heat off');
    terminal.send('t');
    await terminal.until('▐HEAT ON▌');
    terminal.signal('SIGTERM');
    await terminal.until('rc=143');
    await expectRestored(terminal);
    const types = events().map(({ type }) => type);
    expect(types.lastIndexOf('heat-stopped')).toBeGreaterThan(types.lastIndexOf('heat-started'));
  });

  it('should do without colour', async () => {
    const { terminal } = start(80, 24, '', { NO_COLOR: '1' });
    await terminal.until(confirmed);
    terminal.send('Enter');
    await terminal.until('heat off');
    const esc = String.fromCodePoint(27);
    expect(terminal.styled()).not.toMatch(new RegExp(`${esc}\\[[0-9;]*(?:3[0-7]|38)[;m]`, 'u'));
  });

  it('should take lines where --plain asks for them', async () => {
    const { terminal } = start(80, 24, '--plain');
    await terminal.until('One a line: confirm');
    terminal.send('confirm', 'Enter', 'heat FL2', 'Enter');
    await terminal.until(/heat on/iu);
    terminal.send('stop', 'Enter', 'quit', 'Enter');
    await terminal.until('rc=0');
    expect(terminal.ask('#{alternate_on}')).toBe('0');
  });
});
