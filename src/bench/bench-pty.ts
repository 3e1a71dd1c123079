// The virtual bench as a serial port: a pseudo-terminal that any program can open. Needs python3 or socat and
// says so when neither is there. A link with a fixed name can stand for the device across drops.
import { type ChildProcess, spawn } from 'node:child_process';
import { lstat, rm, symlink } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { cleanText } from '../core/clean-text.js';
import type { Numbered } from '../core/events.js';
import type { Clock } from '../session/ports.js';
import { type PtyRelay, ptyRelays } from './pty-relay.js';
import { createServedMeter } from './served-meter.js';
import type { VirtualMeterSetup } from './virtual-meter.js';

export interface BenchPtyOptions {
  readonly setup: VirtualMeterSetup;
  readonly clock: Clock;
  /** A symbolic link that always leads to the present device; made and removed here. */
  readonly linkPath?: string;
  /** Told where the device is, at first and after every return. */
  readonly at: (devicePath: string) => void;
  /** Ways to try, in order. */
  readonly relays?: readonly PtyRelay[];
}

export interface BenchPty {
  /** Takes the device away for so long, as a pulled plug does. */
  drop(forS: number): void;
  /** Lets the technician hear what the walk says. */
  hear(event: Numbered): void;
  close(): Promise<void>;
}

/** No way to a pseudo-terminal, or not under that name; the message is one line for the user. */
export class NoPtyError extends Error {
  override readonly name = 'NoPtyError';
}

/** @throws NoPtyError for anything but a symbolic link: nobody's file is removed. */
const removeLink = async (path: string): Promise<void> => {
  const found = await lstat(path).catch(() => null);
  if (found !== null && !found.isSymbolicLink())
    throw new NoPtyError(`${cleanText(path, 200)} is there already; give a name that is free`);
  await rm(path, { force: true });
};

interface Relay {
  readonly path: string;
  send(bytes: Uint8Array): void;
  end(): Promise<void>;
}

interface RelayEvents {
  opened(): void;
  closed(): void;
  bytes(chunk: Uint8Array): void;
  /** The relay's process is over, whoever ended it. */
  over(): void;
}

/** Seconds for a relay to say where its device is, on however busy a machine; between tries to bring it back. */
const startS = 20;
const retryS = 1;

/** @throws NoPtyError when no relay can be started, or the link's name is taken by a file. */
export const startBenchPty = async (options: BenchPtyOptions): Promise<BenchPty> => {
  const { setup, clock, linkPath, at, relays = ptyRelays } = options;
  let relay: Relay | null = null;
  let closing = false;
  let cancelReturn = (): void => undefined;

  const meter = createServedMeter(setup, clock, {
    send: (bytes) => relay?.send(bytes),
    drop: (forS) => drop(forS),
  });

  const come = async (): Promise<void> => {
    let started: Relay | null = null;
    started = await startAny(relays, {
      opened: () => meter.attach(),
      closed: () => meter.detach(),
      bytes: (chunk) => meter.receive(chunk),
      over: () => {
        meter.detach();
        // A relay that ends when its far end closes is simply started again.
        if (started !== null && relay === started) returnIn(0);
      },
    });
    relay = started;
    if (linkPath !== undefined) {
      await removeLink(linkPath);
      await symlink(started.path, linkPath);
    }
    at(linkPath ?? started.path);
  };

  const returnIn = (seconds: number): void => {
    cancelReturn();
    relay = null;
    if (!closing)
      cancelReturn = clock.after(seconds, () => {
        come().catch(() => returnIn(retryS));
      });
  };

  function drop(forS: number): void {
    const leaving = relay;
    returnIn(forS);
    void leaving?.end();
  }

  if (linkPath !== undefined) await removeLink(linkPath);
  await come();
  return {
    drop,
    hear: (event) => meter.hear(event),
    close: async () => {
      closing = true;
      cancelReturn();
      const leaving = relay;
      relay = null;
      await leaving?.end();
      if (linkPath !== undefined) await removeLink(linkPath);
    },
  };
};

const startAny = async (relays: readonly PtyRelay[], events: RelayEvents): Promise<Relay> => {
  for (const relay of relays) {
    const started = await start(relay, events);
    if (started !== null) return started;
  }
  const names = relays.map(({ program }) => program).join(' or ');
  throw new NoPtyError(`a pseudo-terminal needs ${names}; install one, or use bench --tcp`);
};

/** Null when the program is missing or does not come up. */
const start = ({ program, args, read }: PtyRelay, events: RelayEvents): Promise<Relay | null> =>
  new Promise((resolve) => {
    const child: ChildProcess = spawn(program, args, { stdio: ['pipe', 'pipe', 'pipe'] });
    const over = new Promise<void>((ended) => {
      child.once('close', () => ended());
      child.once('error', () => ended());
    });
    const tooLate = setTimeout(() => child.kill('SIGKILL'), startS * 1000);
    const end = async (): Promise<void> => {
      child.kill('SIGKILL');
      await over;
    };
    // Writing to a relay that has just ended is no error of its own.
    child.stdin?.on('error', () => undefined);
    child.stdout?.on('data', (chunk: Buffer) => events.bytes(chunk));
    if (child.stderr !== null)
      createInterface(child.stderr).on('line', (line) => {
        const word = read(line);
        if (word?.says === 'opened') events.opened();
        if (word?.says === 'closed') events.closed();
        if (word?.says !== 'path') return;
        clearTimeout(tooLate);
        resolve({ path: word.path, send: (bytes) => child.stdin?.write(bytes), end });
      });
    void over.then(() => {
      clearTimeout(tooLate);
      resolve(null);
      events.over();
    });
  });
