// A real serial port for tests: the near end of a pseudo-terminal under a path of our own, with the far end in
// the test's hands. Needs python3 and fails without it; a test that needs a port is never skipped.
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const farEnd = new URL('./pty-far-end.py', import.meta.url).pathname;

export interface Pty {
  readonly path: string;
  /** What the meter sends. Text goes out as Latin-1. */
  write(data: string | Uint8Array): void;
  /** Everything the program has sent so far, as Latin-1. */
  received(): string;
  /** Calls back for every chunk the program sends. */
  hear(call: (text: string) => void): void;
  /** As if the plug were pulled: the device is gone and so is its name. */
  unplug(): Promise<void>;
}

/** A path for a port that does not exist yet; `plugIn` makes it exist. */
export const freePortPath = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-pty-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'port');
};

export const plugIn = async (path = freePortPath()): Promise<Pty> => {
  const child = spawn('python3', [farEnd, path]);
  await ready(child);
  let received = '';
  let heard: (text: string) => void = () => undefined;
  child.stdout.on('data', (chunk: Buffer) => {
    const text = chunk.toString('latin1');
    received += text;
    heard(text);
  });
  child.stdin.on('error', () => undefined);
  const gone = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const unplug = async (): Promise<void> => {
    child.kill('SIGKILL');
    await gone;
    rmSync(path, { force: true });
  };
  onTestFinished(unplug);
  return {
    path,
    write: (data) => {
      child.stdin.write(typeof data === 'string' ? Buffer.from(data, 'latin1') : data);
    },
    received: () => received,
    hear: (call) => {
      heard = call;
    },
    unplug,
  };
};

const ready = (child: ChildProcessWithoutNullStreams): Promise<void> =>
  new Promise((resolve, reject) => {
    child.once('error', (error) =>
      reject(new Error(`python3 is needed for this test: ${error.message}`)),
    );
    let said = '';
    child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.startsWith('ready')) resolve();
    });
    child.once('close', () => reject(new Error(`the far end did not start: ${said}`)));
  });
