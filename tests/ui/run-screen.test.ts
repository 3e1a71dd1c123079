import { stripVTControlCharacters } from 'node:util';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { english } from '../../src/core/words/english.js';
import { runKeyLearner } from '../../src/ui/learn/run-key-learner.js';
import { runScreen, type ScreenOptions } from '../../src/ui/run-screen.js';
import { demoProfile, steppedBench } from './support/bench-session.js';
import { fakeTerminal } from './support/fake-terminal.js';

const enter = '\u001b[?1049h';
const leave = '\u001b[?1049l';
const signals = ['SIGHUP', 'SIGINT', 'SIGTERM'] as const;
const listeners = (): number =>
  signals.reduce((sum, signal) => sum + process.listenerCount(signal), 0) +
  process.listenerCount('uncaughtExceptionMonitor');

const run = (options: Partial<ScreenOptions> = {}) => {
  const bench = steppedBench({ scenario: 'healthy' });
  const terminal = fakeTerminal();
  const { stdin, stdout } = terminal;
  const ended = runScreen({
    session: bench.session,
    words: english,
    profile: demoProfile,
    simulated: true,
    stdin,
    stdout,
    screenReader: false,
    ...options,
  });
  return { ...bench, terminal, ended };
};

afterEach(() => {
  process.exitCode = undefined;
});

describe('screen', () => {
  it('should take the terminal over and give it back', async () => {
    // Ink keeps listeners of its own from its first screen on.
    const first = run();
    first.terminal.send('qq');
    await first.ended;
    const before = listeners();
    const { terminal, ended } = run();
    expect(terminal.written().startsWith(enter)).toBe(true);
    expect(terminal.isRaw()).toBe(true);
    terminal.send('q');
    terminal.send('q');
    await ended;
    expect(terminal.written()).toContain(leave);
    expect(terminal.written().lastIndexOf(leave)).toBeGreaterThan(
      terminal.written().lastIndexOf('J7'),
    );
    expect(terminal.isRaw()).toBe(false);
    expect(listeners()).toBe(before);
  });

  it('should never erase the scrollback', async () => {
    const { terminal, ended, until } = run();
    until(({ cursor }) => cursor === 3);
    terminal.send('qq');
    await ended;
    expect(terminal.written()).not.toContain('\u001b[3J');
  });

  it('should close the session on a signal, and keep its code', async () => {
    const { ended, session } = run();
    process.emit('SIGTERM', 'SIGTERM');
    await ended;
    expect(session.state.stage).toBe('closed');
    expect(process.exitCode).toBe(143);
  });

  it.each(['stdin', 'stdout'] as const)(
    'should close the session when %s shows that the terminal is gone',
    async (end) => {
      const { ended, session, terminal } = run();
      terminal.vanish(end);
      terminal.vanish('stdout');
      const written = terminal.written();
      await ended;
      expect(session.state.stage).toBe('closed');
      // What gives the terminal back goes the same way; nothing visible may.
      expect(stripVTControlCharacters(terminal.written().slice(written.length))).toBe('');
    },
  );

  it('should take remapped keys, function keys of pedals among them', async () => {
    const { ended, session, terminal, until } = run({ keys: { skip: ['f5'], quit: ['f12'] } });
    terminal.send('s');
    expect(session.state.stage).toBe('ground-check');
    terminal.send('\u001b[15~');
    expect(session.state.stage).toBe('walking');
    expect(until(({ cursor }) => cursor === 0, 1)).toBe(true);
    terminal.send('\u001b[24~\u001b[24~');
    await ended;
    expect(session.state.stage).toBe('closed');
  });

  it('should refuse a key map that would not work before it touches the terminal', async () => {
    const { terminal, ended } = run({ keys: { quit: [] } });
    await expect(ended).rejects.toThrow(/quit/u);
    expect(terminal.written()).toBe('');
  });

  it('should say the last cue again on request', async () => {
    const repeat = vi.fn();
    const { terminal, ended } = run({ repeat });
    terminal.send('c');
    expect(repeat).toHaveBeenCalledTimes(1);
    terminal.send('qq');
    await ended;
  });

  it('should print lines for a screen reader, and only those', async () => {
    const { terminal, ended } = run({ screenReader: true });
    terminal.send('s');
    terminal.send('qq');
    await ended;
    expect(terminal.written()).toContain('Touch a ground pin');
    expect(terminal.written()).toContain('Pin 1, GND\n');
    expect(terminal.written()).toBe(stripVTControlCharacters(terminal.written()));
  });
});

describe('learning keys on a terminal', () => {
  it('should return what was pressed, as data, and give the terminal back', async () => {
    const { stdin, stdout, send, written, isRaw } = fakeTerminal();
    const learnt = runKeyLearner({ words: english, stdin, stdout });
    expect(isRaw()).toBe(true);
    send('\u001b[15~');
    send('\r');
    send('\u001b[99~');
    send('\u0003');
    expect(await learnt).toEqual({ open: ['f5'], back: ['seq:1b5b39397e'] });
    expect(written()).toContain(leave);
    expect(isRaw()).toBe(false);
  });
});
