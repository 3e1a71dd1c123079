// A serial link on a real pseudo-terminal pair.
import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { SerialPort } from 'serialport';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { LinkDriver } from '../../src/link/line-cutter.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import type { Patience } from '../../src/link/reconnect.js';
import { dialSerial, type MakePort } from '../../src/link/serial-dial.js';
import { fixedFinder } from '../../src/link/serial-finder.js';
import { freePortPath, plugIn } from '../support/pty.js';
import { recordLink, until } from './record-link.js';
import { linkDriver } from './test-driver.js';

const open = (path: string, driver: LinkDriver, patience: Patience = 'once') => {
  const clock = createMonotonicClock();
  const link = openLink({ kind: 'serial', path, settings: {} }, driver, { clock, patience });
  onTestFinished(() => link.close());
  return { link, recorded: recordLink(link) };
};

describe('a serial link on a pseudo-terminal', () => {
  it('should cut lines at CR, LF and CRLF, keep Latin-1 signs and cap the length', async () => {
    const pty = await plugIn();
    const { recorded } = open(pty.path, linkDriver('stream'));
    await until('opened', () => recorded.told.length > 0);

    pty.write('alf a line\r1.5 k\u00b5\r2 \u00d8\n3\r\n');
    pty.write(`${'9'.repeat(100)}\r`);
    pty.write('4\n');
    await until('the last line', () => recorded.lines.at(-1) === '4');

    expect(recorded.told).toEqual(['opened']);
    expect(recorded.lines).toEqual([
      '1.5 k\u00b5',
      '2 \u00d8',
      '3',
      `overlong ${'9'.repeat(40)}`,
      '4',
    ]);
    expect(recorded.times).toEqual([...recorded.times].sort((a, b) => a - b));
  });

  it('should send in the encoding of the driver and hear the answer from its first byte on', async () => {
    const pty = await plugIn();
    pty.hear((text) => {
      if (text.includes('READ?')) pty.write('+3.896E+02\n');
    });
    const { link, recorded } = open(pty.path, linkDriver('scpi'));
    await until('opened', () => recorded.told.length > 0);

    link.send('READ?\u00b5\n');
    await until('the answer', () => recorded.lines.length > 0);

    expect(pty.received()).toBe('READ?\u00b5\n');
    expect(recorded.lines).toEqual(['+3.896E+02']);
  });

  it('should come back when the device does, and never join two halves of a line', async () => {
    const pty = await plugIn();
    const { link, recorded } = open(pty.path, linkDriver('stream'));
    await until('opened', () => recorded.told.length > 0);
    pty.write('x\n1.1\n1.2');
    await until('the first line', () => recorded.lines.length > 0);

    await pty.unplug();
    await until('lost', () => recorded.told.length > 1);
    link.send('must not be kept for later\n');
    const again = await plugIn(pty.path);
    await until('opened again', () => recorded.told.at(-1) === 'opened again');
    again.write('3.4\n5.6\n');
    await until('the next line', () => recorded.lines.length > 1);

    expect(recorded.lines).toEqual(['1.1', '5.6']);
    expect(recorded.told[1]).toBe(`lost: ${pty.path} went away: unplugged or switched off`);
    expect(again.received()).toBe('');
  });

  it('should notice an unplugging between two reads, of which the port says nothing', async () => {
    const pty = await plugIn();
    let made: SerialPort | undefined;
    const make: MakePort = (options) => {
      made = new SerialPort(options);
      return made;
    };
    const told: string[] = [];
    const wire = { baud: 9600, dataBits: 8, parity: 'none', stopBits: 1 } as const;
    const connection = dialSerial(
      wire,
      fixedFinder(pty.path),
      pty.path,
      make,
    )({
      opened: () => told.push('opened'),
      bytes: () => undefined,
      gone: ({ reason }) => told.push(reason),
    });
    onTestFinished(() => connection.close());
    await until('opened', () => told.length > 0);
    const port = made as SerialPort;
    port.pause();
    pty.write(Buffer.alloc(2 * port.readableHighWaterMark));
    await until('no more is read', () => port.readableLength >= port.readableHighWaterMark);
    await pty.unplug();
    port.resume();
    await until('gone', () => told.length > 1, 5000);
    expect(told[1]).toBe(`${pty.path} went away: unplugged or switched off`);
    await until('let go', () => !port.isOpen, 5000);
  });

  it('should survive four unplugs in a row', async () => {
    let pty = await plugIn();
    const { recorded } = open(pty.path, linkDriver('stream'));
    for (let round = 1; round <= 4; round += 1) {
      const count = round;
      const ups = (): number => recorded.told.filter((word) => word.startsWith('opened')).length;
      await until(`opening ${count}`, () => ups() === count);
      pty.write(`half\n${count}.0\n`);
      await until(`line ${count}`, () => recorded.lines.includes(`${count}.0`));
      await pty.unplug();
      pty = await plugIn(pty.path);
    }
    expect(recorded.lines).toEqual(Array.from({ length: 4 }, (_, i) => `${i + 1}.0`));
  });

  it('should say in words that there is no such port, and not try again', async () => {
    const path = freePortPath();
    const { recorded } = open(path, linkDriver('stream'));
    await until('failed', () => recorded.told.length > 0);
    expect(recorded.told).toEqual([
      `failed: no such port: ${path}; run \`pinwalk ports\` to see what is there`,
    ]);
    await plugIn(path);
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(recorded.told).toHaveLength(1);
  });

  it('should wait for a device that comes later when asked to', async () => {
    const path = freePortPath();
    const { recorded } = open(path, linkDriver('stream'), 'forever');
    await until('lost', () => recorded.told.length > 0);
    await plugIn(path);
    await until('opened', () => recorded.told.length > 1);
    expect(recorded.told[0]).toMatch(/^lost: no such port/u);
    expect(recorded.told[1]).toBe('opened');
  });

  it('should say that a port is in use', async () => {
    const pty = await plugIn();
    const first = open(pty.path, linkDriver('stream'));
    await until('opened', () => first.recorded.told.length > 0);
    const second = open(pty.path, linkDriver('stream'));
    await until('failed', () => second.recorded.told.length > 0);
    expect(second.recorded.told).toEqual([
      `failed: ${pty.path} is in use by another program; close that one first`,
    ]);
  });

  it('should say that a file is no port', async () => {
    const path = freePortPath();
    writeFileSync(path, '1.0\n');
    const { recorded } = open(path, linkDriver('stream'));
    await until('failed', () => recorded.told.length > 0);
    expect(recorded.told).toEqual([`failed: ${path} is not a serial port`]);
  });

  it('should stay up under a flood', async () => {
    const pty = await plugIn();
    const { recorded } = open(pty.path, linkDriver('stream'));
    await until('opened', () => recorded.told.length > 0);
    const burst = '389.6\n'.repeat(20_000);
    pty.write(burst);
    pty.write('end\n');
    await until('the end', () => recorded.lines.at(-1) === 'end', 15_000);
    expect(recorded.lines).toHaveLength(20_000);
    expect(recorded.told).toEqual(['opened']);
  });
});

describe('closing a serial link', () => {
  it('should let the process end, also with a device that is gone', async () => {
    const pty = await plugIn();
    const script = new URL('./open-and-close.ts', import.meta.url).pathname;
    const child = spawn(process.execPath, ['--import', 'tsx', script, pty.path]);
    onTestFinished(() => {
      child.kill('SIGKILL');
    });
    let said = '';
    let complaints = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.stderr.on('data', (chunk: Buffer) => {
      complaints += chunk.toString();
    });
    const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
    await until('both links closed', () => said.includes('closed'), 10_000);
    const closedAt = performance.now();

    expect(await ended).toBe(0);
    expect(performance.now() - closedAt).toBeLessThan(1500);
    expect(complaints).toBe('');
  });
});
