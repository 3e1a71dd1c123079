// The built program in a real terminal. Needs tmux; `npm run build` comes before, as in `npm test`.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, describe, expect, it } from 'vitest';
import { hasTmux, openTerminal, type Terminal, type TerminalOptions } from '../support/terminal.js';

const open: Terminal[] = [];
const folders: string[] = [];
afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

interface Start {
  readonly env?: TerminalOptions['env'];
  readonly link?: string;
}

const driven =
  '--profile demo --driver stream-fields-flags --wait --no-intake --cautions-confirmed --skip-residual demo';

const start = (columns: number, rows: number, { env = {}, link }: Start = {}): Terminal => {
  const source = link ?? 'virtual:demo?speed=2';
  const options = source.startsWith('log:') ? '--profile demo' : driven;
  const command = `sh -c 'echo before; exec node dist/main.js walk ${options} --link "${source}" --session "$HOME/walk.jsonl"'`;
  const terminal = openTerminal({ columns, rows, command, env });
  open.push(terminal);
  return terminal;
};

/** A reading log of a minute, ten readings a second, as `told` says. */
const logOf = (told: (t: number) => object): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-log-'));
  folders.push(folder);
  const lines = Array.from({ length: 600 }, (_, at) => {
    const t = at / 10;
    return JSON.stringify({ t, function: 'resistance', ...told(t) });
  });
  const file = join(folder, 'readings.jsonl');
  writeFileSync(file, `${lines.join('\n')}\n`);
  return `log:${file}`;
};

const events = ({ folder }: Terminal): string => readFileSync(join(folder, 'walk.jsonl'), 'utf8');
const count = (text: string, part: string): number => text.split(part).length - 1;

/** Whatever the program did to the terminal is undone. */
const expectRestored = async (terminal: Terminal): Promise<void> => {
  expect(terminal.ask('#{alternate_on} #{cursor_flag}')).toBe('0 1');
  expect(terminal.screen().join('\n')).toContain('before');
  terminal.send('stty -a | tr -s " ;" "\\n" | grep -x -c -e icanon -e echo', 'Enter');
  await terminal.until(/^2$/mu);
};

describe.skipIf(!hasTmux)('the walk in a terminal', { timeout: 120_000 }, () => {
  it('should show everything at 80 by 24 and take keys', async () => {
    const terminal = start(80, 24);
    await terminal.until('ground 1 of 2');
    terminal.send('s');
    const text = await terminal.until(/next 2 LANE0_P/u);
    expect(text).toContain('SIMULATED');
    expect(text).toContain('resistance to ground');
    terminal.send('g', '1', '7', 'Enter');
    await terminal.until('PLUG_DETECT');
    terminal.send('w', 'dull joint', 'Enter');
    await terminal.until('note at 17: dull joint');
    terminal.send('p');
    await terminal.until('"p" to go on.');
    terminal.send('p');
    await terminal.until((now) => !now.includes('to go on.'));
    terminal.send('?');
    await terminal.until('any key goes back');
    terminal.send('Escape');
    await terminal.until('q quit');
    terminal.send('v');
    await terminal.until('Not normal ·');
    expect(events(terminal)).toContain('"act":"note","pin":"17","text":"dull joint"');
    terminal.send('q');
    await terminal.until('leave');
    terminal.send('q');
    expect(await terminal.until('rc=0')).toMatch(/Next: pinwalk walk --resume \S+walk\.jsonl/u);
  });

  it('should ask about an open line unmissably, and take the answer', async () => {
    const terminal = start(80, 24, { link: logOf(() => ({ overload: true })) });
    const text = await terminal.until('Is the line open?');
    expect(text).toContain('▐o open▌');
    expect(text).toMatch(/█▀{70,}█/u);
    terminal.send('o');
    await terminal.until('○ 1 open');
  });

  it('should say why it does not judge', async () => {
    const link = logOf((t) => (t < 1 ? { value: 0.2 } : { value: 0.2, flags: ['hold'] }));
    const terminal = start(80, 24, { link });
    await terminal.until('hold is on at the meter');
    expect(terminal.screen().join('\n')).toContain('Nothing is judged until that is over.');
  });

  it.each([
    [120, 40, 'Latest'],
    [40, 10, 'SIM▌'],
  ] as const)('should fit %d by %d', async (columns, rows, words) => {
    const terminal = start(columns, rows);
    terminal.send('s');
    const text = await terminal.until((now) => now.includes(words) && /\d of 40/u.test(now), 60);
    const shown = terminal.screen();
    expect(shown.filter((row) => row !== '').length).toBeLessThanOrEqual(rows - 1);
    expect(shown.every((row) => row.length <= columns)).toBe(true);
    expect(count(text, 'of 40')).toBe(1);
  });

  it('should follow every change of size and leave nothing behind', async () => {
    const terminal = start(80, 24);
    await terminal.until('ground 1 of 2');
    for (const [columns, rows] of [
      [40, 10],
      [120, 40],
      [30, 6],
      [60, 20],
      [100, 30],
      [80, 24],
    ] as const) {
      terminal.resize(columns, rows);
      const small = columns < 36;
      await terminal.until(small ? 'at least' : /\d of 40/u);
      await sleep(300);
      const text = terminal.screen().join('\n');
      expect(count(text, small ? 'at least' : 'of 40'), `${columns} by ${rows}`).toBe(1);
      expect(count(text, 'q quit')).toBe(small ? 0 : 1);
    }
    terminal.send('q', 'q');
    await terminal.until('rc=0');
    await expectRestored(terminal);
  });

  it('should ask once more before it leaves, and give the terminal back', async () => {
    const terminal = start(80, 24);
    await terminal.until('ground 1 of 2');
    terminal.send('q');
    await terminal.until('again leaves');
    terminal.send('x');
    await terminal.until((text) => !text.includes('again leaves'));
    terminal.send('C-c');
    await terminal.until('again leaves');
    terminal.send('q');
    await terminal.until('rc=0');
    await expectRestored(terminal);
    expect(events(terminal)).toContain('"type":"session-closed"');
  });

  it.each([
    ['SIGTERM', 143],
    ['SIGHUP', 129],
    ['SIGINT', 130],
  ] as const)('should close the session and give the terminal back on %s', async (signal, code) => {
    const terminal = start(80, 24);
    await terminal.until('ground 1 of 2');
    terminal.signal(signal);
    await terminal.until(`rc=${code}`);
    await expectRestored(terminal);
    expect(events(terminal)).toContain('"type":"session-closed"');
  });

  it('should give the terminal back in a crash, with the error where it can be read', async () => {
    const crash = 'process.on("SIGUSR2", () => { throw new Error("planted") })';
    const terminal = start(80, 24, {
      env: { NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(crash)}` },
    });
    await terminal.until('ground 1 of 2');
    terminal.signal('SIGUSR2');
    await terminal.until(/rc=[1-9]/u);
    expect(terminal.screen().join('\n')).toContain('planted');
    await expectRestored(terminal);
  });

  it.each([0, 5, 30, 80, 150])(
    'should close the session when it is killed %d ms after its file was made',
    async (afterMs) => {
      const terminal = start(80, 24);
      const file = join(terminal.folder, 'walk.jsonl');
      for (const until = performance.now() + 30_000; !existsSync(file); ) {
        if (performance.now() > until) throw new Error('no session file was made');
        await sleep(1);
      }
      await sleep(afterMs);
      terminal.signal('SIGTERM');
      await terminal.until('rc=143');
      await expectRestored(terminal);
      expect(events(terminal).trimEnd().split('\n').at(-1)).toContain('"type":"session-closed"');
      expect(existsSync(`${file}.lock`)).toBe(false);
    },
  );

  it.each([
    ['SIGTERM', 143],
    ['C-c', 2],
  ] as const)(
    'should close the session when the walk is left for good before it: %s',
    async (how, code) => {
      const link = '--link tcp://127.0.0.1:9 --driver stream-fields-flags --wait';
      const command = `sh -c 'echo before; exec node dist/main.js walk --profile demo ${link} --no-intake --cautions-confirmed --session "$HOME/walk.jsonl"'`;
      const terminal = openTerminal({ columns: 80, rows: 24, command });
      open.push(terminal);
      await terminal.until('s leaves it out:');
      if (how === 'C-c') terminal.send(how);
      else terminal.signal(how);
      await terminal.until(`rc=${code}`);
      await expectRestored(terminal);
      expect(terminal.screen().join('\n')).toContain('left before the walk began');
      expect(events(terminal).trimEnd().split('\n').at(-1)).toContain('"type":"session-closed"');
    },
  );

  it('should end when its terminal goes away', async () => {
    const terminal = start(80, 24);
    await terminal.until('ground 1 of 2');
    const file = join(terminal.folder, 'walk.jsonl');
    expect(existsSync(file)).toBe(true);
    const read = (): string => readFileSync(file, 'utf8');
    terminal.hangUp();
    for (let at = 0; at < 200 && !read().includes('session-closed'); at += 1) await sleep(50);
    expect(read()).toContain('"type":"session-closed"');
  });

  it('should use no colour where none is wanted, and still mark the place', async () => {
    const terminal = start(80, 24, { env: { NO_COLOR: '1' } });
    await terminal.until('ground 1 of 2');
    terminal.send('s');
    await terminal.until('next 2');
    const styled = terminal.styled();
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are what is looked for
    expect(styled).not.toMatch(/\u001b\[[\d;]*(?:3[0-8]|9[0-7]|4[0-8])[;m]/u);
    expect(styled).toMatch(/\[(?:1;)?7m +\d+ /u);
  });

  it('should do with ASCII where the locale has no more', async () => {
    const terminal = start(80, 24, { env: { LC_ALL: 'C' } });
    await terminal.until('ground 1 of 2');
    terminal.send('s');
    const text = await terminal.until('next 2');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the range is what is meant
    expect(text).toMatch(/^[\u0000-\u007f]*$/u);
    expect(text).toContain('[SIMULATED]');
  });

  it('should print lines for a screen reader and draw nothing over', async () => {
    const terminal = start(80, 24, { env: { INK_SCREEN_READER: 'true' } });
    await terminal.until('Touch a ground pin');
    const written = terminal.record();
    terminal.send('s');
    await terminal.until('Pin 1, GND');
    terminal.send('g', '1', '7', 'Enter');
    await terminal.until('Pin 17, PLUG_DETECT');
    expect(terminal.ask('#{alternate_on}')).toBe('0');
    expect(written()).not.toContain('\u001b');
    terminal.send('q', 'q');
    await terminal.until('rc=0');
  });

  it('should draw at most fifteen frames a second, however fast readings come', async () => {
    const terminal = start(80, 24, { link: 'virtual:demo?rate=50' });
    await terminal.until('ground 1 of 2');
    const written = terminal.record();
    const startMs = performance.now();
    await sleep(4000);
    const seconds = (performance.now() - startMs) / 1000;
    const frames = count(written(), '\u001b[?2026h');
    expect(frames).toBeGreaterThan(4);
    expect(frames / seconds).toBeLessThanOrEqual(15.5);
  });

  it('should write nothing while nothing changes', async () => {
    const terminal = start(80, 24, { link: 'tcp://127.0.0.1:9' });
    await terminal.until('The meter is gone.');
    await sleep(500);
    const written = terminal.record();
    await sleep(2500);
    // The bell is the cues' own.
    expect(written().replaceAll('\u0007', '')).toBe('');
  });
});
