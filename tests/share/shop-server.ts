// A shop's server on this machine: serves a folder, and takes what is put to /inbox as the contract says.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

export interface Taken {
  readonly path: string;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

export interface ShopServer {
  readonly address: string;
  /** Every request, as method and path. */
  readonly asked: readonly string[];
  readonly taken: readonly Taken[];
  /** Answers the next request in place of the server. */
  next(answer: (request: IncomingMessage, response: ServerResponse) => void): void;
}

export const startShop = async (folder: string): Promise<ShopServer> => {
  const asked: string[] = [];
  const taken: Taken[] = [];
  const instead: ((request: IncomingMessage, response: ServerResponse) => void)[] = [];
  const server = createServer((request, response) => {
    asked.push(`${request.method} ${request.url}`);
    const answer = instead.shift();
    if (answer !== undefined) answer(request, response);
    else if (request.method === 'PUT') take(request, response);
    else serve(request, response);
  });

  const serve = (request: IncomingMessage, response: ServerResponse): void => {
    let body: Buffer;
    try {
      body = readFileSync(join(folder, decodeURIComponent(request.url ?? '')));
    } catch {
      response.writeHead(404).end();
      return;
    }
    const etag = `"${createHash('sha256').update(body).digest('hex')}"`;
    const isKnown = request.headers['if-none-match'] === etag;
    response.writeHead(isKnown ? 304 : 200, { etag }).end(isKnown ? undefined : body);
  };

  const take = (request: IncomingMessage, response: ServerResponse): void => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const body = Buffer.concat(chunks);
      const known = taken.some(({ path }) => path === request.url);
      if (!known) taken.push({ path: request.url ?? '', headers: request.headers, body });
      response.writeHead(known ? 200 : 201).end();
    });
  };

  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const { port } = server.address() as { port: number };
  return {
    address: `http://127.0.0.1:${port}`,
    asked,
    taken,
    next: (answer) => void instead.push(answer),
  };
};
