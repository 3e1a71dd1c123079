// Every way in which a shop's server can fail or lie, and what must then still be on the disk.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Brought, fetchLibrary, IndexError } from '../../src/share/fetch-library.js';
import { ShareError } from '../../src/share/share-error.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { startShop } from './shop-server.js';

const shop = 'https://shop.example';
const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');
const profile = '{"id":"j1"}';
const entryFor = (text: string, version = '1'): object => ({
  ...{ kind: 'profile', id: 'j1', version, title: 'J1' },
  files: [{ name: 'j1.json', sha256: sha256(text), bytes: Buffer.byteLength(text) }],
});
const indexOf = (...entries: object[]): string =>
  JSON.stringify({ format: 'pinwalk-library/1', title: 'Shop', entries });

describe('fetching a library', () => {
  let folder: string;
  beforeEach(() => {
    folder = join(temporaryFolder(), 'library');
    nock.disableNetConnect();
    nock.enableNetConnect('127.0.0.1');
  });
  afterEach(() => {
    nock.cleanAll();
    nock.enableNetConnect();
  });

  const fetchAll = async (
    wish: Partial<Parameters<typeof fetchLibrary>[0]> = {},
  ): Promise<Brought[]> => {
    const brought: Brought[] = [];
    const address = new URL(`${shop}/lib`);
    const all = { address, folder, token: null, check: () => [], patienceS: 5, ...wish };
    for await (const one of fetchLibrary(all)) brought.push(one);
    return brought;
  };
  const failure = async (wish: Parameters<typeof fetchAll>[0] = {}): Promise<unknown> => {
    try {
      await fetchAll(wish);
    } catch (error) {
      if (error instanceof ShareError) return error.found;
      if (error instanceof IndexError) return error.problems.map(({ what }) => what).join();
      throw error;
    }
    throw new Error('it went well');
  };
  const serveIndex = (text: string, headers: Record<string, string> = {}) =>
    nock(shop).get('/lib/index.json').reply(200, text, headers);
  const local = (): string => readFileSync(join(folder, 'profiles/j1.json'), 'utf8');

  it('should bring what is listed, then ask only whether anything is new', async () => {
    serveIndex(indexOf(entryFor(profile)), { etag: '"one"' });
    nock(shop).get('/lib/profiles/j1.json').reply(200, profile);
    expect(await fetchAll()).toMatchObject([{ outcome: 'fetched' }]);
    expect(local()).toBe(profile);
    nock(shop, { reqheaders: { 'if-none-match': '"one"' } })
      .get('/lib/index.json')
      .reply(304);
    expect(await fetchAll()).toMatchObject([{ outcome: 'current' }]);
    expect(nock.isDone()).toBe(true);
  });

  it('should bring a new version, and remove what is no longer listed', async () => {
    serveIndex(indexOf(entryFor(profile)));
    nock(shop).get('/lib/profiles/j1.json').reply(200, profile);
    await fetchAll();
    const newer = '{"id":"j1","v":2}';
    serveIndex(indexOf(entryFor(newer, '2')));
    nock(shop).get('/lib/profiles/j1.json').reply(200, newer);
    expect(await fetchAll()).toMatchObject([{ outcome: 'fetched' }]);
    expect(local()).toBe(newer);
    serveIndex(indexOf());
    expect(await fetchAll()).toMatchObject([{ outcome: 'withdrawn' }]);
    expect(readdirSync(join(folder, 'profiles'))).toEqual([]);
  });

  it('should mend a file that was changed on the disk although nothing is new on the server', async () => {
    serveIndex(indexOf(entryFor(profile)), { etag: '"one"' });
    nock(shop).get('/lib/profiles/j1.json').twice().reply(200, profile);
    await fetchAll();
    writeFileSync(join(folder, 'profiles/j1.json'), 'changed');
    nock(shop).get('/lib/index.json').reply(304);
    expect(await fetchAll()).toMatchObject([{ outcome: 'fetched' }]);
    expect(local()).toBe(profile);
  });

  it.each([
    [404, { fault: 'answered', status: 404 }],
    [401, { fault: 'answered', status: 401 }],
    [500, { fault: 'answered', status: 500 }],
    [503, { fault: 'answered', status: 503 }],
  ])('should leave everything as it was when the server answers %i', async (status, found) => {
    serveIndex(indexOf(entryFor(profile)));
    nock(shop).get('/lib/profiles/j1.json').reply(200, profile);
    await fetchAll();
    nock(shop).get('/lib/index.json').reply(status, 'x');
    expect(await failure()).toMatchObject(found);
    expect(local()).toBe(profile);
  });

  it('should not wait for ever, neither for an answer nor for the rest of one', async () => {
    nock(shop).get('/lib/index.json').delay({ head: 3000 }).reply(200, indexOf());
    expect(await failure({ patienceS: 0.2 })).toMatchObject({ fault: 'too-slow', seconds: 0.2 });
    nock(shop).get('/lib/index.json').delay({ body: 3000 }).reply(200, indexOf());
    expect(await failure({ patienceS: 0.2 })).toMatchObject({ fault: 'too-slow' });
  });

  it.each([
    'http://shop.example/lib/index.json',
    'https://elsewhere.example/lib/index.json',
    'https://shop.example:8443/lib/index.json',
    'file:///etc/passwd',
    'https://[',
  ])('should not be sent on to %s', async (location) => {
    nock(shop).get('/lib/index.json').reply(302, '', { location });
    const stolen = nock(/elsewhere|shop\.example/u)
      .get('/lib/index.json')
      .reply(200, indexOf());
    expect(await failure({ token: 'secret' })).toMatchObject({ fault: 'sent-elsewhere' });
    expect(stolen.isDone()).toBe(false);
  });

  it('should go along with another path on the same server, but not in circles', async () => {
    const reqheaders = { authorization: 'Bearer secret' };
    nock(shop).get('/lib/index.json').reply(302, '', { location: '/v2/index.json' });
    nock(shop, { reqheaders }).get('/v2/index.json').reply(200, indexOf());
    expect(await fetchAll({ token: 'secret' })).toEqual([]);
    nock(shop).get('/lib/index.json').times(4).reply(302, '', { location: '/lib/index.json' });
    expect(await failure()).toMatchObject({ fault: 'sent-in-circles' });
  });

  it('should never tell the token over an open wire', async () => {
    const address = new URL('http://shop.example/lib');
    expect(await failure({ address, token: 'secret' })).toMatchObject({ fault: 'token-in-clear' });
  });

  it.each([
    ['another content', profile.replace('j1', 'j2'), 'wrong-hash'],
    ['only the beginning', profile.slice(0, 5), 'wrong-hash'],
    ['far more', profile + 'x'.repeat(100_000), 'too-large'],
  ])('should refuse a file with %s and keep the old one', async (_case, sent, fault) => {
    const old = '{"id":"j1","old":1}';
    serveIndex(indexOf(entryFor(old)));
    nock(shop).get('/lib/profiles/j1.json').reply(200, old);
    await fetchAll();
    serveIndex(indexOf(entryFor(profile)));
    nock(shop).get('/lib/profiles/j1.json').reply(200, sent);
    expect(await fetchAll()).toMatchObject([{ outcome: 'failed', found: { fault } }]);
    expect(local()).toBe(old);
    expect(existsSync(join(folder, '.incoming'))).toBe(false);
  });

  it('should refuse a file whose content is not sound, with its lines', async () => {
    serveIndex(indexOf(entryFor(profile)));
    nock(shop).get('/lib/profiles/j1.json').reply(200, profile);
    const check = (): string[] => ['j1.json:1: error: "title" is missing'];
    expect(await fetchAll({ check })).toMatchObject([
      { outcome: 'refused', lines: [expect.stringContaining('title')] },
    ]);
    expect(existsSync(join(folder, 'profiles/j1.json'))).toBe(false);
  });

  it.each([
    ['{', 'column'],
    ['[]', 'one object'],
    ['<html>Not found</html>', 'column'],
    [indexOf(entryFor(profile)).replace('j1.json', '../j1.json'), 'does not have the right form'],
    [indexOf(entryFor(profile)).replace('"version"', '"__proto__"'), '__proto__'],
    [indexOf(entryFor(profile)).replace('pinwalk-library/1', 'pinwalk-library/2'), 'reads'],
  ])('should refuse the index %s as a whole', async (text, says) => {
    serveIndex(text);
    expect(await failure()).toContain(says);
    expect(existsSync(folder)).toBe(false);
  });

  it('should see an answer that breaks off, from a real server', async () => {
    const server = await startShop(temporaryFolder());
    server.next((_request, response) => {
      response.writeHead(200, { 'content-length': '1000' });
      response.write('{"format"', () => response.destroy());
    });
    const address = new URL(server.address);
    expect(await failure({ address })).toMatchObject({ fault: 'cut-short' });
    server.next((request) => request.socket.destroy());
    expect(await failure({ address })).toMatchObject({ fault: 'unreachable' });
  });

  it('should say that nobody answers', async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as { port: number };
    await new Promise((resolve) => server.close(resolve));
    const address = new URL(`http://127.0.0.1:${port}/lib`);
    expect(await failure({ address })).toMatchObject({ fault: 'unreachable', why: 'ECONNREFUSED' });
  });
});
