// A real terminal of a given size with a program in it: keys are sent, the screen is captured. Each terminal is
// a tmux server of its own, so that closing it touches nothing else.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

export interface TerminalOptions {
  readonly columns: number;
  readonly rows: number;
  /** A shell command line. It runs in a shell that stays afterwards and tells `rc=` and its exit code. */
  readonly command: string;
  readonly env?: Readonly<Record<string, string>>;
}

export interface Terminal {
  /** A folder of its own, removed with the terminal. */
  readonly folder: string;
  /** The rows as text, without trailing spaces. */
  screen(): readonly string[];
  /** The rows with their SGR sequences. */
  styled(): string;
  /** Keys by tmux's names ('Enter', 'F5', 'C-c') or as they are typed. */
  send(...keys: readonly string[]): void;
  resize(columns: number, rows: number): void;
  /** Waits until the screen satisfies `wanted`; returns it. @throws Error with the last screen when it never does. */
  until(wanted: string | RegExp | ((text: string) => boolean), patienceS?: number): Promise<string>;
  /** A tmux format, such as '#{alternate_on}'. */
  ask(format: string): string;
  /** Sends a signal to the program, which is the only child of the shell. */
  signal(name: NodeJS.Signals): void;
  /** Everything the program writes from now on, as raw text. */
  record(): () => string;
  /** The terminal goes away under the program, as when its window is closed. */
  hangUp(): void;
  close(): void;
}

export const hasTmux = spawnSync('tmux', ['-V']).status === 0;

const pollMs = 50;

export const openTerminal = (options: TerminalOptions): Terminal => {
  const { columns, rows, command, env = {} } = options;
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-terminal-'));
  const server = ['-S', join(folder, 'tmux'), '-f', '/dev/null'];
  const tmux = (...args: readonly string[]): string =>
    execFileSync('tmux', [...server, ...args], { encoding: 'utf8' });

  // CI would keep Ink from drawing; a colour setting of the caller's would colour the test.
  const { CI: _, NO_COLOR: _n, FORCE_COLOR: _f, ...inherited } = process.env;
  const wanted = { LC_ALL: 'C.UTF-8', COLORTERM: 'truecolor', HOME: folder, ...env };
  const settings = Object.entries(wanted).map(([name, value]) => `${name}=${quoted(value)}`);
  const shell = `cd ${quoted(process.cwd())}; export ${settings.join(' ')}; ${command}; echo rc=$?; exec sh`;
  execFileSync(
    'tmux',
    [...server, 'new-session', '-d', '-x', String(columns), '-y', String(rows), shell],
    { env: inherited },
  );

  const screen = (): readonly string[] =>
    tmux('capture-pane', '-p')
      .split('\n')
      .map((row) => row.trimEnd());
  return {
    folder,
    screen,
    styled: () => tmux('capture-pane', '-p', '-e'),
    send: (...keys) => void tmux('send-keys', ...keys),
    resize: (width, height) =>
      void tmux('resize-window', '-x', String(width), '-y', String(height)),
    async until(asked, patienceS = 30) {
      const fits =
        typeof asked === 'function'
          ? asked
          : (text: string) => (typeof asked === 'string' ? text.includes(asked) : asked.test(text));
      const endMs = performance.now() + 1000 * patienceS;
      for (;;) {
        const text = screen().join('\n');
        if (fits(text)) return text;
        if (performance.now() > endMs) {
          throw new Error(`the screen never showed ${String(asked)}; it shows\n${text}`);
        }
        await sleep(pollMs);
      }
    },
    ask: (format) => tmux('display-message', '-p', format).trim(),
    signal(name) {
      const pane = tmux('display-message', '-p', '#{pane_pid}').trim();
      const [child] = readFileSync(`/proc/${pane}/task/${pane}/children`, 'utf8').trim().split(' ');
      if (child === undefined || child === '') throw new Error('no program runs in the terminal');
      process.kill(Number(child), name);
    },
    record() {
      const file = join(folder, `record-${performance.now()}`);
      tmux('pipe-pane', '-o', `cat > ${quoted(file)}`);
      return () => {
        tmux('pipe-pane');
        return readFileSync(file, 'utf8');
      };
    },
    hangUp: () => void spawnSync('tmux', [...server, 'kill-server']),
    close() {
      spawnSync('tmux', [...server, 'kill-server']);
      // The program may still be writing its last words there.
      rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
    },
  };
};

const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;
