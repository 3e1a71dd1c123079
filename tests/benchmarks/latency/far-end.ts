// The far end of a pseudo-terminal, for a program that is measured: lines go out when they are told to.
import { spawn } from 'node:child_process';
import { once } from 'node:events';

const script = new URL('../../support/pty-far-end.py', import.meta.url).pathname;

export interface FarEnd {
  send(line: string): void;
  close(): Promise<void>;
}

/** @param path where the near end will be. */
export const openFarEnd = async (path: string): Promise<FarEnd> => {
  const child = spawn('python3', [script, path], { stdio: ['pipe', 'ignore', 'pipe'] });
  await once(child.stderr, 'data');
  return {
    send: (line) => void child.stdin.write(line),
    async close() {
      child.stdin.end();
      await once(child, 'close');
    },
  };
};
