import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/core/problems.js';
import { checkFile } from '../../src/store/check-file.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { readLog } from '../../src/store/read-log.js';
import { sample, temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const check = (content: string | Uint8Array) => {
  writeFileSync(folder.path('file'), content);
  const { kind, problems, summary } = checkFile(folder.path('file'));
  return { kind, summary, lines: problems.map((problem) => formatProblem('F', problem)) };
};

const session = async (): Promise<string> => {
  const journal = createJournal(folder.path('s.jsonl'));
  journal.append(sample);
  await journal.close();
  return readFileSync(folder.path('s.jsonl'), 'utf8');
};

const log = '{"t":0,"function":"resistance","value":1}\n{"t":1,"mark":"open"}\n';

describe('telling files apart by their content', () => {
  it.each([
    ['driver', () => readFileSync('drivers/scpi-read.json', 'utf8')],
    ['profile', () => readFileSync('profiles/demo.json', 'utf8')],
    ['profile', () => JSON.stringify(JSON.parse(readFileSync('profiles/demo.json', 'utf8')))],
    ['session', session],
    ['reading log', () => log],
  ])('should find a %s sound', async (kind, text) => {
    expect(check(await text())).toMatchObject({ kind, lines: [] });
  });

  it.each([
    [
      'driver',
      '{"format":"pinwalk-driver/2"}',
      /this version of pinwalk reads "pinwalk-driver\/1"/,
    ],
    ['driver', '{"wire":{}}', /"format" is missing; add "format": "pinwalk-driver\/1"/],
    ['profile', '{\n"connector":{}}', /^F:1: error: format: "format" is missing/],
    [
      'profile',
      '{"format":"pinwalk-profile/1",\n}',
      /^F:1: error: column 30: a comma stands before/,
    ],
    ['reading log', `${log}{"t":2}\n`, /^F:3: error: .*exactly one of/],
    ['reading log', `${log}{"t":2,"\\u001b[2J":1}\n`, /^F:3: error: unknown key "\P{Cc}*$/u],
    ['reading log', `${log}nonsense\n`, /^F:3: error: not JSON; each line holds one object/],
    ['reading log', `${log}{"t":0.5,"mark":"open"}\n`, /^F:3: error: time falls/],
    [
      undefined,
      '{"a":1}',
      /this is no driver, profile, drill, session, reading log, configuration or set/,
    ],
    [undefined, 'pins: 40\n', /give another file/],
    [undefined, '', /give another file/],
    [undefined, Uint8Array.of(0xff, 0xfe, 0x7b, 0), /saved as UTF-16/],
  ])('should explain a %s that is not sound', (kind, content, says) => {
    const found = check(content);
    expect(found.kind).toBe(kind);
    expect(found.lines[0]).toMatch(says);
  });

  it('should answer a file that is not there', () => {
    expect(checkFile(folder.path('none'))).toMatchObject({
      kind: undefined,
      problems: [{ what: 'there is no such file' }],
    });
  });
});

describe('checking a session', () => {
  it('should sum it up with its fingerprint', async () => {
    await session();
    copyFileSync(folder.path('s.jsonl'), folder.path('copy.jsonl'));
    const { summary, fingerprint } = checkFile(folder.path('copy.jsonl'));
    expect(fingerprint).toMatch(/^[0-9a-f]{64}$/u);
    const groups = [0, 4, 8, 12].map((from) => fingerprint?.slice(from, from + 4)).join(' ');
    expect(summary).toBe(`6 events, fingerprint ${groups}`);
  });

  it('should tell of a torn end without calling it an error', async () => {
    const text = await session();
    const { kind, lines } = check(text.slice(0, -30));
    expect(kind).toBe('session');
    expect(lines).toEqual([
      expect.stringMatching(
        /^F:6: warning: the last event was never finished; \d+ bytes of it are there; nothing before it is lost/,
      ),
    ]);
  });

  it('should know a damaged one for a session still', async () => {
    const text = await session();
    expect(check(`x${text.slice(1)}`)).toMatchObject({
      kind: 'session',
      lines: [expect.stringMatching(/^F:1: error: the line is not one whole event/)],
    });
  });

  it('should tell of a newer format in words', async () => {
    const text = (await session()).replace('pinwalk-session/1', 'pinwalk-session/2');
    expect(check(text).lines[0]).toMatch(
      /^F:1: error: the session is in format "pinwalk-session\/2", this version reads "pinwalk-session\/1"; use the version/,
    );
  });

  it('should count events that only a later version knows', async () => {
    const journal = createJournal(folder.path('t.jsonl'));
    journal.append(sample.slice(0, 2));
    const mark = journal.fingerprint.slice(0, 16);
    await journal.close();
    const later = `{"seq":2,"t":9,"type":"moon-risen","phase":0.5,"prev":"${mark}"}\n`;
    const found = check(readFileSync(folder.path('t.jsonl'), 'utf8') + later);
    expect(found).toMatchObject({
      kind: 'session',
      lines: [],
      summary: expect.stringMatching(
        /^3 events, 1 of types this version does not know, fingerprint/,
      ),
    });
  });

  it('should stop counting problems at a hundred', async () => {
    const text = await session();
    expect(check(text + '{"seq":1}\n'.repeat(500)).lines).toHaveLength(100);
  });
});

it('should answer any bytes with problems of one line each, and never fail', () => {
  const piece = fc.oneof(
    fc.uint8Array({ maxLength: 40 }),
    fc.json().map((text) => Buffer.from(text)),
    fc
      .constantFrom(
        '\n',
        '{"seq":0',
        '"format":"pinwalk-profile/1"',
        '"t":1',
        '"prev":"',
        '\u001b]0;x\u0007',
        log,
      )
      .map((text) => Buffer.from(text)),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      for (const line of check(Buffer.concat(pieces)).lines) expect(line).toMatch(/^\P{Cc}*$/u);
    }),
    { seed: 31, numRuns: 1500 },
  );
});

describe('reading a log from a file', () => {
  it('should give its inputs in order', () => {
    writeFileSync(folder.path('log'), log);
    expect([...readLog(folder.path('log'))]).toEqual([
      { kind: 'reading', reading: { t: 0, function: 'resistance', value: 1 } },
      { kind: 'act', t: 1, act: { act: 'open' } },
    ]);
  });

  it('should name the file and the line of a slip', () => {
    writeFileSync(folder.path('log'), `${log}{"t":2,"mark":"later"}\n`);
    expect(() => [...readLog(folder.path('log'))]).toThrow(/log:3: error: unknown mark; known are/);
  });
});
