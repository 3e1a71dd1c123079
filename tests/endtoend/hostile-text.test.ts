// Text from a meter, a file, a name, a server or the command line, made to act on a terminal: at every way in, what
// the built program prints shows it and nothing of it acts.

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer as createHttp } from 'node:http';
import { createServer as createTcp, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createJournal } from '../../src/store/journal-writer.js';
import { hostileSession } from '../report/hostile-session.js';
import { runProgram } from '../support/run-program.js';

/** Shown, this begins with `Zq`; obeyed, it colours, clears, renames, turns, hides or begins a line. */
const short =
  'Zq\u001b[31m\u001b]0;t\u0007\u009b2J\u202ex\u2066\u200b\u2028\u{e0041}\nFORGED\r\ufeff\u0085';
const evil = `${short}${'w'.repeat(6000)}`;
const folder = mkdtempSync(join(tmpdir(), 'pinwalk-hostile-'));
const at = (name: string): string => join(folder, name);
const shipped = (path: string): Record<string, unknown> =>
  JSON.parse(readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8'));
const writeJson = (name: string, value: unknown): void =>
  writeFileSync(at(name), JSON.stringify(value));

/** Every text of a definition made hostile, but for those that are held to a form. */
const withEvil = (value: unknown, keys: ReadonlySet<string>): unknown => {
  if (Array.isArray(value)) return value.map((item) => withEvil(item, keys));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [
      key,
      keys.has(key) && typeof item === 'string' ? evil : withEvil(item, keys),
    ]),
  );
};

const closers: (() => void)[] = [];
afterAll(() => {
  for (const close of closers) close();
  rmSync(folder, { recursive: true, force: true });
});

const listen = (server: ReturnType<typeof createTcp>): Promise<number> =>
  new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve((server.address() as { port: number }).port));
    closers.push(() => server.close());
  });

/** An instrument whose every answer is hostile, and that hangs up after a while. */
const startMeter = (): Promise<number> => {
  const sockets = new Set<Socket>();
  closers.push(() => sockets.forEach((socket) => void socket.destroy()));
  return listen(
    createTcp((socket) => {
      sockets.add(socket);
      socket.on('error', () => undefined);
      const line = short.replaceAll(/[\r\n]/gu, '');
      socket.on('data', (chunk) => {
        const text = chunk.toString('latin1');
        if (text.includes('*IDN?')) socket.write(`${line},${line},7,${line}\r\n`);
        else if (text.includes('SYST')) socket.write(`-113,"${line}"\r\n`);
        else socket.write(`${line}\r\n`);
      });
    }),
  );
};

/** A shop whose index is sound and hostile, and which answers everything else with a hostile page. */
const startShop = async (): Promise<number> => {
  const entries = [
    {
      ...{ kind: 'profile', id: 'evil', version: short.slice(0, 39), title: evil.slice(0, 199) },
      files: [{ name: 'evil.json', sha256: '0'.repeat(64), bytes: 100 }],
    },
  ];
  const server = createHttp((request, response) => {
    if (request.url?.endsWith('good/index.json'))
      response.end(JSON.stringify({ format: 'pinwalk-library/1', title: 'Zq', entries }));
    else if (request.url?.endsWith('bad/index.json'))
      response.end(JSON.stringify({ format: short, [short]: short }));
    else if (request.url?.endsWith('away/index.json'))
      response.writeHead(302, { location: 'http://elsewhere.example/Zq%1b%0aFORGED' }).end();
    else response.writeHead(500, { 'content-type': 'text/plain' }).end(evil);
  });
  return await listen(server);
};

interface Row {
  readonly name: string;
  readonly args: readonly string[];
  readonly input?: string;
  /** A parser says that something is wrong without repeating it. */
  readonly silent?: true;
}

const rows = (meter: number, shop: number): readonly Row[] => {
  const [session, profile, driver] = [at('session.jsonl'), at('evil.json'), at('evil-driver.json')];
  const walk = ['walk', '--link', 'stdin:', '--profile', profile, '--plain'];
  const real = ['--profile', 'demo', '--cautions-confirmed', '--session'];
  return [
    { name: 'an unknown command', args: [short] },
    { name: 'an unknown option', args: ['walk', `--${short}`] },
    { name: 'a value that is no choice', args: ['walk', '--cues', short] },
    { name: 'a value that is no number', args: ['walk', '--range', short] },
    { name: 'a kind of link', args: ['walk', '--link', short] },
    { name: 'a bench', args: ['bench', short, '--tcp', '0'] },
    { name: 'a bench option', args: ['walk', '--link', `virtual:demo?${short}=1`] },
    {
      name: 'a serial path',
      args: [
        'walk',
        '--link',
        `serial:/dev/${short}`,
        '--driver',
        'scpi-read',
        ...real,
        at('a.jsonl'),
      ],
    },
    {
      name: 'a host',
      args: ['walk', '--link', `tcp://${short}:1`, '--driver', 'scpi-read', ...real, at('b.jsonl')],
    },
    {
      name: 'a log',
      args: ['walk', '--link', `log:${at(short)}`, '--profile', 'demo', '--session', at('c.jsonl')],
    },
    { name: 'a driver id', args: ['walk', '--link', 'virtual:demo', '--driver', short] },
    { name: 'a group', args: ['walk', '--link', 'virtual:demo', '--groups', short] },
    {
      name: 'a path to save',
      args: ['walk', '--link', 'virtual:demo', '--session', at(`${short}/s.jsonl`)],
    },
    { name: 'a session to resume', args: ['walk', '--resume', at(short)] },
    {
      name: 'a file to check',
      args: ['check', at(short), at('broken.json'), profile, driver, session],
    },
    { name: 'a file to report', args: ['report', at(short)] },
    { name: 'a file that is no session', args: ['report', at(`${short.slice(0, 60)}.json`)] },
    { name: 'a folder', args: ['history', at('sessions')] },
    { name: 'a part', args: ['rework', session, '--part', short, '--action', 'reflow'] },
    {
      name: 'an observation',
      args: ['triage', '--profile', profile, '--observe', `${short.slice(0, 30)}=yes`],
    },
    {
      name: 'a profile in a walk',
      args: [...walk, '--session', at('d.jsonl')],
      input: '0.1\nOL\n388\n',
    },
    { name: 'typed values', args: [...walk, '--session', at('e.jsonl')], input: `${short}\n` },
    {
      name: 'intake',
      args: [...walk, ...['--session', at('f.jsonl'), '--symptom', evil, '--ticket', short]],
      input: '0.1\n',
    },
    { name: 'a session in lines', args: ['replay', session, '--plain', '--speed', 'max'] },
    { name: 'a session as JSON', args: ['replay', session, '--json', '--speed', 'max'] },
    { name: 'a session judged anew', args: ['rerun', session, '--profile', profile] },
    { name: 'a report on stdout', args: ['report', session, '--format', 'markdown', '--out', '-'] },
    { name: 'a table on stdout', args: ['report', session, '--format', 'csv', '--out', '-'] },
    { name: 'a page on stdout', args: ['report', session, '--out', '-'] },
    {
      name: 'a reading log with faults',
      args: ['rerun', at('log.jsonl'), '--profile', 'demo', '--json', '--readings'],
    },
    { name: 'settings', args: ['config', '--config', at('config.json')] },
    { name: 'settings as JSON', args: ['config', '--config', at('config.json'), '--json'] },
    { name: 'settings that are not sound', args: ['config', '--config', at('bad-config.json')] },
    { name: 'a path of settings', args: ['config', '--config', at(short)] },
    { name: 'what answers', args: ['ports', '--identify', '--link', `tcp://127.0.0.1:${meter}`] },
    {
      name: 'a library',
      args: ['share', 'fetch', '--from', `http://127.0.0.1:${shop}/good/`],
      silent: true,
    },
    {
      name: 'a library index',
      args: ['share', 'fetch', '--from', `http://127.0.0.1:${shop}/bad/`],
    },
    {
      name: 'a server that sends on',
      args: ['share', 'fetch', '--from', `http://127.0.0.1:${shop}/away/`],
    },
    {
      name: 'an error page',
      args: ['share', 'fetch', '--from', `http://127.0.0.1:${shop}/none/`],
      silent: true,
    },
    { name: 'an address', args: ['share', 'fetch', '--from', short] },
  ];
};

const said = new Map<string, string>();
const table = rows(0, 0);

beforeAll(async () => {
  writeJson('evil.json', {
    ...(withEvil(
      shipped('profiles/demo.json'),
      new Set(['title', 'by', 'how', 'pinOne', 'note', 'where', 'joint', 'chip', 'says', 'asks']),
    ) as object),
    id: 'evil',
  });
  writeJson('evil-driver.json', {
    ...shipped('drivers/scpi-read.json'),
    title: evil,
    id: 'evil-driver',
  });
  writeJson('broken.json', {
    format: 'pinwalk-profile/1',
    [short]: short,
    id: short,
    title: short,
  });
  writeJson(`${short.slice(0, 60)}.json`, { format: 'pinwalk-driver/1' });
  writeJson('config.json', {
    format: 'pinwalk-config/1',
    technician: short,
    link: short,
    driver: 'x',
  });
  writeJson('bad-config.json', { format: 'pinwalk-config/1', cues: short, [short]: 1 });
  writeFileSync(
    at('log.jsonl'),
    `${JSON.stringify({ t: 1, fault: short })}\n${JSON.stringify({ t: 2, function: 'resistance', value: 1 })}\n`,
  );
  const journal = createJournal(at('session.jsonl'));
  journal.append(hostileSession(short));
  await journal.close();
  mkdirSync(at('sessions'));
  writeFileSync(at(`sessions/${short.slice(0, 60)}.jsonl`), `{"${short}`);
  const all = [...rows(await startMeter(), await startShop())];
  const env = {
    XDG_CONFIG_HOME: at('home'),
    XDG_DATA_HOME: at('data'),
    HOME: folder,
    LC_ALL: 'C.UTF-8',
  };
  const hand = async (): Promise<void> => {
    for (let row = all.shift(); row !== undefined; row = all.shift()) {
      const { lines, stderr } = await runProgram(row.args, { env, input: row.input ?? '' });
      said.set(row.name, `${lines.join('\n')}\n${stderr}`);
    }
  };
  await Promise.all([hand(), hand(), hand()]);
}, 180_000);

const acting =
  /(?!\n)[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Bidi_Control}\u200b\u2060\ufeff\u{e0000}-\u{e007f}]/u;

describe('hostile text', () => {
  it('should be hostile to begin with', () => {
    expect(short).toMatch(acting);
    expect(JSON.stringify(short)).toMatch(acting);
  });

  it.each(table)('should be shown and not obeyed: $name', ({ name, silent, args }) => {
    const text = said.get(name) ?? '';
    expect(acting.exec(text)).toBeNull();
    expect(text).not.toMatch(/^FORGED/mu);
    expect(text).not.toMatch(/unexpected failure/u);
    if (!args.includes('--json') && !args.includes('-')) {
      expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(4100);
    }
    if (silent !== true) expect(text).toContain('Zq');
  });
});
