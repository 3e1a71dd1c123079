// Starts a program with a list of arguments, never through a shell, and tells whether it ended well. Refuses to
// throw: a program that is not there has ended badly.
import { spawn } from 'node:child_process';
import type { Clock } from '../session/ports.js';

export interface Command {
  readonly program: string;
  readonly args: readonly string[];
  /** Added to the environment. */
  readonly env?: Readonly<Record<string, string>>;
}

export interface Running {
  /** True when it exited with 0. Settles once the process is gone. */
  readonly ended: Promise<boolean>;
  kill(): void;
}

export type Start = (command: Command) => Running;

export const startProcess: Start = ({ program, args, env }) => {
  try {
    const child = spawn(program, args, {
      stdio: 'ignore',
      windowsHide: true,
      ...(env === undefined ? {} : { env: { ...process.env, ...env } }),
    });
    const ended = new Promise<boolean>((resolve) => {
      child.once('exit', (code) => resolve(code === 0));
      child.once('error', () => resolve(false));
    });
    // A player that is asked politely may first play on to the end of its buffer.
    return { ended, kill: () => void child.kill('SIGKILL') };
  } catch {
    return { ended: Promise.resolve(false), kill: () => undefined };
  }
};

/** Waits for the end; kills at the limit or on the signal, which counts as ended badly. */
export const endOf = async (
  running: Running,
  limit: { readonly clock: Clock; readonly seconds: number; readonly signal: AbortSignal },
): Promise<boolean> => {
  const kill = (): void => running.kill();
  const cancel = limit.clock.after(limit.seconds, kill);
  limit.signal.addEventListener('abort', kill);
  if (limit.signal.aborted) kill();
  const well = await running.ended;
  cancel();
  limit.signal.removeEventListener('abort', kill);
  return well;
};
