// Starts the writing program and follows what it says.
import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

export interface Child {
  readonly process: ChildProcess;
  /** Every word so far. */
  readonly said: readonly string[];
  /** Resolves with the first word that fits, said already or to come; rejects when the program ends without. */
  heard(fits: (word: string) => boolean): Promise<string>;
  readonly ended: Promise<void>;
}

/** @param through a command that runs the program, such as `setpriv`. */
export const startChild = (args: readonly string[], through: readonly string[] = []): Child => {
  const script = fileURLToPath(new URL('session-child.ts', import.meta.url));
  const [command = '', ...rest] = [
    ...through,
    process.execPath,
    '--import',
    'tsx',
    script,
    ...args,
  ];
  const child = spawn(command, rest, { stdio: ['ignore', 'pipe', 'inherit'] });
  const said: string[] = [];
  const listeners = new Set<() => void>();
  let over = false;
  const lines = createInterface({ input: child.stdout });
  lines.on('line', (word) => {
    said.push(word);
    for (const call of listeners) call();
  });
  const ended = new Promise<void>((resolve) => {
    lines.on('close', () => {
      over = true;
      for (const call of listeners) call();
      resolve();
    });
  });
  const heard = (fits: (word: string) => boolean): Promise<string> =>
    new Promise((resolve, reject) => {
      const look = (): void => {
        const word = said.find(fits);
        if (word === undefined && !over) return;
        listeners.delete(look);
        if (word === undefined) reject(new Error(`never said; it said: ${said.join(' | ')}`));
        else resolve(word);
      };
      listeners.add(look);
      look();
    });
  return { process: child, said, heard, ended };
};
