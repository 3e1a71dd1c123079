// The far end of a wire, in a test's hands: a real pseudo-terminal or a real socket that a meter would be on.
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { realpathSync, rmSync } from 'node:fs';
import { createServer, type Socket } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Peer {
  /** What `--link` takes. */
  readonly link: string;
  /** Latin-1. */
  send(text: string): void;
  hear(call: (text: string) => void): void;
  /** The plug is pulled: the device and its name are gone, or the socket and its listener. */
  unplug(): Promise<void>;
  plugIn(): Promise<void>;
}

const script = fileURLToPath(new URL('../../support/pty-far-end.py', import.meta.url));

export const ptyPeer = async (folder: string): Promise<Peer> => {
  const path = join(folder, 'meter');
  let child: ChildProcessWithoutNullStreams | null = null;
  let heard: (text: string) => void = () => undefined;
  let device = '';
  /** Each time under another device name, behind the one name that stays. */
  const plugIn = async (): Promise<void> => {
    child = spawn('python3', [script, path, device]);
    child.stdin.on('error', () => undefined);
    child.stdout.on('data', (chunk: Buffer) => heard(chunk.toString('latin1')));
    await once(child.stderr, 'data');
    device = realpathSync(path);
  };
  await plugIn();
  return {
    link: `serial:${path}`,
    send: (text) => void child?.stdin.write(Buffer.from(text, 'latin1')),
    hear: (call) => {
      heard = call;
    },
    unplug: async () => {
      const leaving = child;
      child = null;
      leaving?.kill('SIGKILL');
      if (leaving !== null) await once(leaving, 'close');
      rmSync(path, { force: true });
    },
    plugIn,
  };
};

export const tcpPeer = async (): Promise<Peer> => {
  const sockets = new Set<Socket>();
  let heard: (text: string) => void = () => undefined;
  let port = 0;
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    socket.on('error', () => undefined);
    socket.on('data', (chunk: Buffer) => heard(chunk.toString('latin1')));
  });
  const plugIn = async (): Promise<void> => {
    server.listen(port, '127.0.0.1');
    await once(server, 'listening');
    ({ port } = server.address() as { port: number });
  };
  await plugIn();
  return {
    link: `tcp://127.0.0.1:${port}`,
    send: (text) => {
      for (const socket of sockets) socket.write(Buffer.from(text, 'latin1'));
    },
    hear: (call) => {
      heard = call;
    },
    unplug: async () => {
      const closed = once(server, 'close');
      server.close();
      for (const socket of sockets) socket.destroy();
      await closed;
    },
    plugIn,
  };
};
