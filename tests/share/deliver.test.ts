import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Delivered, type DeliveryWish, deliver } from '../../src/share/deliver.js';
import { type Item, type Outbox, openOutbox } from '../../src/share/outbox.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { startShop } from './shop-server.js';

const shop = 'https://shop.example';
const fingerprint = 'f'.repeat(64);

describe('delivering', () => {
  let folder: string;
  let outbox: Outbox;
  let pauses: number[];
  beforeEach(() => {
    folder = join(temporaryFolder(), 'outbox');
    outbox = openOutbox(folder);
    pauses = [];
    nock.disableNetConnect();
    nock.enableNetConnect('127.0.0.1');
  });
  afterEach(() => {
    nock.cleanAll();
    nock.enableNetConnect();
  });

  const queue = (text: string, name = 'session.jsonl'): Item => {
    const item: Item = {
      format: 'pinwalk-outbox/1',
      sha256: createHash('sha256').update(text).digest('hex'),
      bytes: Buffer.byteLength(text),
      path: `${fingerprint}/${name}`,
      mediaType: 'application/jsonl',
      customerData: false,
      queued: '2026-01-31T10:00:00.000Z',
      attempts: 0,
      last: null,
    };
    outbox.keep(item, Buffer.from(text));
    return item;
  };
  const send = async (wish: Partial<DeliveryWish> = {}): Promise<Delivered[]> => {
    const done: Delivered[] = [];
    const pause = (seconds: number): Promise<void> => {
      pauses.push(seconds);
      return Promise.resolve();
    };
    const address = new URL(`${shop}/inbox/`);
    const all = { address, token: 'secret', attempts: 3, pause, patienceS: 5, ...wish };
    for await (const one of deliver(outbox, all)) done.push(one);
    return done;
  };
  const path = `/inbox/${fingerprint}/session.jsonl`;

  it('should put the bytes under their hash as key, and forget them once they are taken', async () => {
    const { sha256 } = queue('the session\n');
    nock(shop, {
      reqheaders: {
        authorization: 'Bearer secret',
        'idempotency-key': sha256,
        'content-type': 'application/jsonl',
        'content-length': '12',
        // RFC 9530, section 2: the digest in base64 between colons.
        'content-digest': /^sha-256=:[A-Za-z0-9+/]{43}=:$/u,
      },
    })
      .put(path, 'the session\n')
      .reply(201);
    expect(await send()).toMatchObject([{ outcome: 'delivered' }]);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('should try again after a while, longer each time, with the same key', async () => {
    const { sha256 } = queue('x');
    const same = { reqheaders: { 'idempotency-key': sha256 } };
    nock(shop, same).put(path).reply(503);
    nock(shop, same).put(path).reply(429, '', { 'retry-after': '7' });
    nock(shop, same).put(path).reply(200);
    expect(await send()).toMatchObject([{ outcome: 'delivered' }]);
    expect(pauses).toEqual([1, 7]);
  });

  it('should keep what cannot be delivered for the next start of the program', async () => {
    queue('x');
    nock(shop).put(path).times(3).reply(500);
    expect(await send()).toMatchObject([{ outcome: 'kept', found: { status: 500 } }]);
    outbox = openOutbox(folder);
    expect(outbox.items()).toMatchObject([{ attempts: 3, last: 'answered' }]);
    nock(shop).put(path).reply(200);
    expect(await send()).toMatchObject([{ outcome: 'delivered' }]);
  });

  it.each([400, 401, 403, 409, 413, 422])(
    'should not press a server that says %i',
    async (status) => {
      queue('x');
      nock(shop).put(path).reply(status);
      expect(await send()).toMatchObject([{ outcome: 'kept', found: { status } }]);
      expect(pauses).toEqual([]);
      expect(outbox.items()).toHaveLength(1);
    },
  );

  it('should go on with the next file after one that is refused, but not against a closed door', async () => {
    queue('x', 'report.html');
    queue('y');
    nock(shop).put(`/inbox/${fingerprint}/report.html`).reply(413);
    nock(shop).put(path).reply(200);
    expect((await send()).map(({ outcome }) => outcome)).toEqual(['kept', 'delivered']);
    queue('y');
    nock(shop).put(`/inbox/${fingerprint}/report.html`).reply(401);
    expect((await send()).map(({ outcome }) => outcome)).toEqual(['kept']);
    expect(outbox.items()).toHaveLength(2);
  });

  it.each([
    [302, '/elsewhere'],
    [307, 'https://elsewhere.example/inbox'],
    [307, 'http://shop.example/inbox'],
  ])('should not follow %i to %s', async (status, location) => {
    queue('x');
    nock(shop).put(path).reply(status, '', { location });
    const other = nock(/example/u)
      .put(/elsewhere|inbox/u)
      .reply(200);
    expect(await send()).toMatchObject([{ found: { fault: 'sent-elsewhere' } }]);
    expect(other.isDone()).toBe(false);
  });

  it('should give up a server that never answers', async () => {
    queue('x');
    nock(shop).put(path).delay(3000).reply(200);
    const [done] = await send({ patienceS: 0.2, attempts: 1 });
    expect(done).toMatchObject({ outcome: 'kept', found: { fault: 'too-slow' } });
  });

  it('should not send what was changed in the outbox', async () => {
    const item = queue('honest');
    writeFileSync(outbox.bytesPath(item), 'forged');
    expect(await send()).toMatchObject([{ found: { fault: 'changed-on-disk' } }]);
  });

  it('should keep one of what is queued twice, closed to others, without the token', async () => {
    queue('x');
    queue('x');
    expect(outbox.items()).toHaveLength(1);
    nock(shop).put(path).reply(401);
    await send();
    for (const name of readdirSync(folder)) {
      expect(readFileSync(join(folder, name), 'utf8')).not.toContain('secret');
      expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
    }
  });

  it('should pass over a slip that leads elsewhere', () => {
    const item = queue('x');
    const slip = join(folder, `${item.sha256}.json`);
    writeFileSync(slip, JSON.stringify({ ...item, path: '../../admin' }));
    expect(outbox.items()).toEqual([]);
    writeFileSync(slip, JSON.stringify({ ...item, sha256: 'e'.repeat(64) }));
    expect(outbox.items()).toEqual([]);
  });

  it('should come through to a real server that drops the connection once', async () => {
    const server = await startShop(temporaryFolder());
    const text = 'a line\n'.repeat(50_000);
    queue(text);
    server.next((request) => request.socket.destroy());
    const [done] = await send({ address: new URL(`${server.address}/inbox`) });
    expect(done).toMatchObject({ outcome: 'delivered' });
    expect(server.taken[0]?.body.toString()).toBe(text);
    expect(server.taken[0]?.headers['content-length']).toBe(String(text.length));
  });
});
