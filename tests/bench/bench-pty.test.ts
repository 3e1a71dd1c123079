// The bench as a serial device, in real time, through python3: the device is opened as a plain file, which a
// pseudo-terminal in raw mode allows.
import {
  closeSync,
  constants,
  existsSync,
  mkdtempSync,
  openSync,
  readFileSync,
  readSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parseBenchName } from '../../src/bench/bench-name.js';
import { NoPtyError, startBenchPty } from '../../src/bench/bench-pty.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import { ptyRelays } from '../../src/bench/pty-relay.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { shippedDriver } from '../support/driver-files.js';
import { shippedProfile } from './support/profile-files.js';

const setup = benchSetup({
  bench: parseBenchName('healthy'),
  driver: shippedDriver('scpi-read'),
  profile: shippedProfile('demo'),
  hears: false,
});
const clock = createMonotonicClock();
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

const until = async (done: () => boolean): Promise<void> => {
  for (let tries = 0; !done(); tries += 1) {
    if (tries > 200) throw new Error('it did not happen within four seconds');
    await pause(20);
  }
};

const opened = new Set<number>();

const openDevice = (path: string): number => {
  const { O_RDWR, O_NOCTTY, O_NONBLOCK } = constants;
  const device = openSync(path, O_RDWR | O_NOCTTY | O_NONBLOCK);
  opened.add(device);
  onTestFinished(() => closeDevice(device));
  return device;
};

/** Once: by the test, or after it. */
const closeDevice = (device: number): void => {
  if (opened.delete(device)) closeSync(device);
};

const ask = async (device: number, text: string): Promise<string> => {
  writeSync(device, text);
  let answer = '';
  await until(() => {
    const bytes = Buffer.alloc(256);
    try {
      answer += bytes.toString('latin1', 0, readSync(device, bytes));
    } catch {
      // Nothing there yet.
    }
    return answer.endsWith('\n');
  });
  return answer;
};

const start = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-bench-'));
  const linkPath = join(folder, 'meter');
  const told: string[] = [];
  const pty = await startBenchPty({ setup, clock, linkPath, at: (path) => told.push(path) });
  onTestFinished(async () => {
    await pty.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return { pty, linkPath, told };
};

describe('the bench as a pseudo-terminal', () => {
  it('should answer under a fixed name', async () => {
    const { linkPath, told } = await start();
    expect(told).toEqual([linkPath]);
    const device = openDevice(linkPath);
    expect(await ask(device, '*IDN?\n')).toBe('PINWALK,VIRTUAL BENCH,0,1\r\n');
    expect(await ask(device, 'READ?\n')).toBe('+9.90000000E+37\r\n');
  });

  it('should answer again when it is closed and opened', async () => {
    const { linkPath } = await start();
    const first = openDevice(linkPath);
    expect(await ask(first, '*OPC?\n')).toBe('1\r\n');
    closeDevice(first);
    await pause(100);
    expect(await ask(openDevice(linkPath), '*OPC?\n')).toBe('1\r\n');
  });

  it('should go away and come back when dropped', async () => {
    const { pty, linkPath, told } = await start();
    const device = openDevice(linkPath);
    await ask(device, '*OPC?\n');
    pty.drop(0.2);
    await until(() => {
      try {
        return readSync(device, Buffer.alloc(8)) === 0;
      } catch (error) {
        return (error as NodeJS.ErrnoException).code === 'EIO';
      }
    });
    closeDevice(device);
    await until(() => told.length === 2);
    expect(await ask(openDevice(linkPath), '*OPC?\n')).toBe('1\r\n');
  });

  it('should take its name away when it closes', async () => {
    const { pty, linkPath } = await start();
    expect(existsSync(linkPath)).toBe(true);
    await pty.close();
    expect(existsSync(linkPath)).toBe(false);
  });

  it('should never remove what is no link of its own', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pinwalk-bench-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const linkPath = join(folder, 'notes.txt');
    writeFileSync(linkPath, 'mine');
    const starting = startBenchPty({ setup, clock, linkPath, at: () => undefined });
    await expect(starting).rejects.toThrow('is there already');
    expect(readFileSync(linkPath, 'utf8')).toBe('mine');
  });

  it('should say what is needed where no way to a pseudo-terminal is found', async () => {
    const missing = { ...ptyRelays[0], program: 'no-such-program', args: [], read: () => null };
    const starting = startBenchPty({
      setup,
      clock,
      at: () => undefined,
      relays: [missing as never],
    });
    await expect(starting).rejects.toThrow(NoPtyError);
    await expect(starting).rejects.toThrow('use bench --tcp');
  });
});
