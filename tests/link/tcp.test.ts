// A TCP link against real sockets on loopback.
import { createServer, type Server, type Socket } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import type { Patience } from '../../src/link/reconnect.js';
import { dialTcp } from '../../src/link/tcp-dial.js';
import { recordLink, until } from './record-link.js';
import { linkDriver } from './test-driver.js';

const serve = async (port = 0) => {
  const sockets: Socket[] = [];
  const server: Server = createServer((socket) => {
    sockets.push(socket);
    socket.on('error', () => undefined);
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      for (const socket of sockets) socket.destroy();
      server.close(() => resolve());
    });
  onTestFinished(stop);
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no TCP address');
  return { port: address.port, sockets, stop };
};

const open = (port: number, patience: Patience = 'once', style: 'stream' | 'scpi' = 'stream') => {
  const clock = createMonotonicClock();
  const name = { kind: 'tcp', host: '127.0.0.1', port } as const;
  const link = openLink(name, linkDriver(style), { clock, patience });
  onTestFinished(() => link.close());
  return { link, recorded: recordLink(link) };
};

describe('a TCP link', () => {
  it('should hear whole lines however they are cut into packets', async () => {
    const { port, sockets } = await serve();
    const { recorded } = open(port);
    await until('a connection', () => sockets.length > 0);
    const [socket] = sockets;
    socket?.setNoDelay();
    for (const piece of ['x\r', '\n38', '9.6 \u03a9'.replace('\u03a9', '\u00d8'), '\r\n1\r2\n3']) {
      socket?.write(Buffer.from(piece, 'latin1'));
      await new Promise((resolve) => setTimeout(resolve, 15));
    }
    await until('three lines', () => recorded.lines.length >= 3);
    expect(recorded.lines).toEqual(['389.6 \u00d8', '1', '2']);
    expect(recorded.told).toEqual(['opened']);
  });

  it('should ask and be answered', async () => {
    const { port, sockets } = await serve();
    const { link, recorded } = open(port, 'once', 'scpi');
    await until('a connection', () => sockets.length > 0 && recorded.told.length > 0);
    sockets[0]?.on('data', (question) => sockets[0]?.write(`answer to ${question.toString()}`));
    link.send('*IDN?\n');
    await until('the answer', () => recorded.lines.length > 0);
    expect(recorded.lines).toEqual(['answer to *IDN?']);
  });

  it('should come back after the peer was gone, without joining half lines', async () => {
    const first = await serve();
    const { recorded } = open(first.port);
    await until('a connection', () => first.sockets.length > 0);
    first.sockets[0]?.write('x\n1.0\n1.2');
    await until('the first line', () => recorded.lines.length > 0);
    await first.stop();
    await until('lost', () => recorded.told.length > 1);
    const second = await serve(first.port);
    await until('opened again', () => recorded.told.at(-1) === 'opened again');
    second.sockets[0]?.write('3.4\n5.6\n');
    await until('the next line', () => recorded.lines.length > 1);

    expect(recorded.lines).toEqual(['1.0', '5.6']);
    expect(recorded.told[1]).toMatch(/^lost: 127\.0\.0\.1:\d+ (closed|cut) the connection$/u);
  });

  it('should say in words that nothing listens there', async () => {
    const { port, stop } = await serve();
    await stop();
    const { recorded } = open(port);
    await until('failed', () => recorded.told.length > 0);
    expect(recorded.told).toEqual([
      `failed: nothing listens at 127.0.0.1:${port}; is the meter on and its LAN port enabled?`,
    ]);
  });

  it('should wait for a peer that comes later when asked to', async () => {
    const { port, stop } = await serve();
    await stop();
    const { recorded } = open(port, 'forever');
    await until('lost', () => recorded.told.length > 0);
    await serve(port);
    await until('opened', () => recorded.told.at(-1) === 'opened');
    expect(recorded.told).toHaveLength(2);
  });

  it('should cap an endless line and live on', async () => {
    const { port, sockets } = await serve();
    const { recorded } = open(port);
    await until('a connection', () => sockets.length > 0);
    sockets[0]?.write(`x\n${'7'.repeat(5_000_000)}\nend\n`);
    await until('the end', () => recorded.lines.at(-1) === 'end', 15_000);
    expect(recorded.lines).toEqual([`overlong ${'7'.repeat(40)}`, 'end']);
  });

  it('should give up a peer that is asked and gives no sign of life', async () => {
    const { port, sockets } = await serve();
    const told: string[] = [];
    const patience = { connectWithinS: 1, keepAliveAfterS: 1, deadAfterS: 0.15 };
    const connection = dialTcp(
      { host: '127.0.0.1', port },
      patience,
    )({
      opened: () => told.push('opened'),
      bytes: (chunk) => told.push(Buffer.from(chunk).toString()),
      gone: ({ reason }) => told.push(reason),
    });
    onTestFinished(() => connection.close());
    await until('opened', () => told.length > 0 && sockets.length > 0);

    connection.send(Buffer.from('a'));
    sockets[0]?.once('data', () => sockets[0]?.write('b'));
    await until('an answer', () => told.includes('b'));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(told).toEqual(['opened', 'b']);

    connection.send(Buffer.from('c'));
    await until('gone', () => told.length > 2);
    expect(told[2]).toBe(`127.0.0.1:${port} gave no sign of life for 0.15 s`);
  });

  it('should be closed for the peer too, and hear nothing afterwards', async () => {
    const { port, sockets } = await serve();
    const { link, recorded } = open(port);
    await until('a connection', () => sockets.length > 0 && recorded.told.length > 0);
    let ended = false;
    sockets[0]
      ?.on('data', () => undefined)
      .on('close', () => {
        ended = true;
      });
    await link.close();
    await until('the peer sees the end', () => ended);
    expect(recorded.told).toEqual(['opened']);
  });
});
