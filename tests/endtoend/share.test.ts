// A shop and two benches: one makes a library, the other fetches it, works offline, and delivers what it found.
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { startShop } from '../share/shop-server.js';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

it('should fetch from and deliver to a shop, and tell nobody the token', async () => {
  const folder = temporaryFolder();
  const library = join(folder, 'served/library');
  mkdirSync(join(library, 'profiles'), { recursive: true });
  copyFileSync(at('tests/fixtures/short-row.json'), join(library, 'profiles/short-row.json'));
  expect((await runProgram(['share', 'index', library])).code).toBe(0);

  const shop = await startShop(join(folder, 'served'));
  const token = 'a-token-nobody-may-see';
  const tokenFile = join(folder, 'token');
  writeFileSync(tokenFile, `${token}\n`, { mode: 0o600 });
  const config = join(folder, 'config.json');
  const settings = { library: `${shop.address}/library/`, delivery: `${shop.address}/inbox/` };
  writeFileSync(config, JSON.stringify({ format: 'pinwalk-config/1', ...settings, tokenFile }));
  const env = { XDG_CONFIG_HOME: folder, XDG_DATA_HOME: join(folder, 'data'), HOME: folder };
  const said: string[] = [];
  const run = async (args: string[], input?: string) => {
    const done = await runProgram([...args, '--config', config], {
      env,
      ...(input === undefined ? {} : { input }),
    });
    said.push(...done.lines, done.stderr);
    return done;
  };

  const fetched = await run(['share', 'fetch']);
  expect(fetched.lines.at(-1)).toBe('Library: 1 fetched, 0 up to date, 0 removed, 0 not fetched.');
  const session = join(folder, 'mrs-testperson.jsonl');
  const walk = ['walk', '--link', 'stdin:', '--profile', 'short-row', '--session', session];
  const walked = await run([...walk, '--plain'], '0.1\n388\nOL\n0.2\n4.7k\n1.2k\n1.2k\n0.1\n');
  expect(walked.code).toBe(0);

  shop.next((request, response) => {
    request.resume();
    response.writeHead(401).end(`no entry with ${request.headers.authorization}`);
  });
  const refused = await run(['share', 'deliver', session]);
  expect(refused.code).toBe(4);
  expect(refused.lines.join('\n')).toContain('check the token');
  expect(refused.stderr).toContain('Try again with `pinwalk share outbox --retry`.');
  const elsewhere = await runProgram(['share', 'outbox'], { env });
  expect(elsewhere.lines).toContain('Try again with `pinwalk share outbox --retry --to URL`.');
  const given = await runProgram(['share', 'outbox', '--to', `${shop.address}/inbox/`], { env });
  expect(given.lines.at(-1)).toContain(`--retry --to ${shop.address}/inbox/`);
  const waiting = await run(['share', 'outbox', '--json']);
  expect(JSON.parse(waiting.lines[0] ?? '')).toMatchObject({ attempts: 1, customerData: false });

  expect((await run(['share', 'outbox', '--retry'])).code).toBe(0);
  expect((await run(['share', 'deliver', session])).code).toBe(0);
  expect(shop.taken).toHaveLength(1);
  const [taken] = shop.taken;
  expect(taken?.headers.authorization).toBe(`Bearer ${token}`);
  const received = join(folder, 'received.jsonl');
  writeFileSync(received, taken?.body ?? '');
  expect(taken?.body.toString()).not.toContain('testperson');
  expect((await run(['check', received])).code).toBe(0);

  const whole = await run(['share', 'deliver', session, '--with-customer-data']);
  expect(whole.code).toBe(0);
  expect(shop.taken[1]?.body.equals(readFileSync(session))).toBe(true);
  expect(said.join('\n')).not.toContain(token);
  const kept = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = kept.filter((entry) => entry.isFile() && entry.name !== 'token');
  expect(files.length).toBeGreaterThan(4);
  for (const { parentPath, name } of files) {
    expect(readFileSync(join(parentPath, name), 'utf8')).not.toContain(token);
  }
}, 120_000);

it('should need no address to say that nothing waits to be delivered', async () => {
  const folder = temporaryFolder();
  const env = { XDG_CONFIG_HOME: folder, XDG_DATA_HOME: join(folder, 'data'), HOME: folder };
  const plain = await runProgram(['share', 'outbox', '--retry'], { env });
  expect(plain).toMatchObject({ code: 0, lines: ['Nothing waits to be delivered.'] });
  const { code, lines } = await runProgram(['share', 'outbox', '--retry', '--json'], { env });
  expect(code).toBe(0);
  expect(lines.map((line): unknown => JSON.parse(line))).toEqual([
    { type: 'outbox-tried', delivered: 0, waiting: 0 },
  ]);
});

it('should say in one line that an index cannot be written', async () => {
  const library = temporaryFolder();
  mkdirSync(join(library, 'profiles'));
  copyFileSync(at('tests/fixtures/short-row.json'), join(library, 'profiles/short-row.json'));
  mkdirSync(join(library, 'index.json'));
  const { code, stderr } = await runProgram(['share', 'index', library]);
  expect(code).toBe(5);
  expect(stderr).toMatch(/^pinwalk: .*index\.json is a folder; give the name of a file\n$/u);
});
