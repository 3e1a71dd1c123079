// A session file cut at every byte, as a killed process or a power failure may leave it: every whole event is
// still there, the torn one is told and kept, and the session goes on.
import { readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Numbered } from '../../src/core/events.js';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { resumeJournal } from '../../src/store/resume-journal.js';
import { note, reading, resumed, sample, temporaryFolder } from '../store/sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const wholeSession = async (): Promise<{ bytes: Buffer; ends: number[]; events: Numbered[] }> => {
  const path = folder.path('whole.jsonl');
  const journal = createJournal(path);
  const events = [...journal.append(sample)];
  await journal.close();
  const bytes = readFileSync(path);
  const ends: number[] = [];
  for (let at = bytes.indexOf(10); at !== -1; at = bytes.indexOf(10, at + 1)) ends.push(at);
  return { bytes, ends, events };
};

const goOn = async (path: string, t: number) => {
  const { events, tornBytes, lastT, journal, notices } = resumeJournal(path);
  const more = journal.append([resumed(t, tornBytes), reading(t + 1)]);
  await journal.close();
  return { events, tornBytes, lastT, notices, more };
};

describe('a session cut short', () => {
  it('should lose no whole event and go on, wherever it was cut', async () => {
    const { bytes, ends, events } = await wholeSession();
    const [headerEnd = 0] = ends;
    let torn = 0;
    for (let cut = headerEnd; cut <= bytes.length; cut += 1) {
      const path = folder.path(`cut-${cut}.jsonl`);
      writeFileSync(path, bytes.subarray(0, cut));
      // An event is whole with its last brace; the newline after it may be missing.
      const whole = ends.filter((end) => end <= cut).length;
      const start = (ends[whole - 1] ?? 0) + 1;
      const expectedTorn = Math.max(0, cut - start);

      const before = checkFile(path);
      expect(before.problems.map(({ level }) => level)).toEqual(
        expectedTorn > 0 ? ['warning'] : [],
      );

      const { events: found, tornBytes, lastT, notices, more } = await goOn(path, 100);
      expect(found).toEqual(events.slice(0, whole));
      expect(tornBytes).toBe(expectedTorn);
      expect(lastT).toBe(events[whole - 1]?.t);
      expect(more.map(({ seq }) => seq)).toEqual([whole, whole + 1]);
      if (tornBytes > 0) {
        torn += 1;
        expect(notices).toEqual([
          expect.stringContaining(`line ${whole + 1} holds ${tornBytes} byte`),
        ]);
      } else expect(notices).toEqual([]);

      expect(readFileSync(path).subarray(0, cut)).toEqual(bytes.subarray(0, cut));
      expect([...readSession(path)]).toEqual([...found, ...more]);
      expect(checkFile(path)).toMatchObject({ kind: 'session', problems: [] });
    }
    expect(torn).toBeGreaterThan(300);
  });

  it('should refuse a cut within the header, in which nothing was recorded', async () => {
    const { bytes, ends } = await wholeSession();
    const [headerEnd = 0] = ends;
    for (let cut = 0; cut < headerEnd; cut += 7) {
      const path = folder.path('header.jsonl');
      writeFileSync(path, bytes.subarray(0, cut));
      expect(() => resumeJournal(path)).toThrow(
        cut === 0
          ? /the file is empty; nothing was recorded/
          : /there is no whole event in the file/,
      );
      expect(readFileSync(path)).toEqual(bytes.subarray(0, cut));
    }
  });

  it('should bear being cut again while it goes on', async () => {
    const { bytes, ends, events } = await wholeSession();
    const firstCut = (ends[3] ?? 0) - 20;
    const path = folder.path('twice.jsonl');
    writeFileSync(path, bytes.subarray(0, firstCut));
    await goOn(path, 100);
    const resumedOnce = readFileSync(path);
    for (let cut = firstCut; cut <= resumedOnce.length; cut += 3) {
      writeFileSync(path, resumedOnce);
      truncateSync(path, cut);
      const { events: found, more } = await goOn(path, 200);
      expect(found.slice(0, 3)).toEqual(events.slice(0, 3));
      expect([...readSession(path)]).toEqual([...found, ...more]);
      expect(checkFile(path).problems).toEqual([]);
      expect(readFileSync(path).subarray(0, cut)).toEqual(resumedOnce.subarray(0, cut));
    }
  });

  it('should hold a torn line of zeros, as some file systems leave one', async () => {
    const { bytes } = await wholeSession();
    const path = folder.path('zeros.jsonl');
    writeFileSync(path, Buffer.concat([bytes, Buffer.alloc(4096)]));
    const { tornBytes } = await goOn(path, 100);
    expect(tornBytes).toBe(4096);
    expect(checkFile(path).problems).toEqual([]);
  });

  it('should not be written to before its torn bytes are told', async () => {
    const { bytes } = await wholeSession();
    const path = folder.path('untold.jsonl');
    writeFileSync(path, bytes.subarray(0, bytes.length - 9));
    const { journal, tornBytes } = resumeJournal(path);
    expect(() => journal.append([note(9, 'x')])).toThrow(/must be session-resumed/);
    expect(() => journal.append([resumed(9, tornBytes + 1)])).toThrow(/tell of \d+ torn bytes/);
    expect(statSync(path).size).toBe(bytes.length - 9);
    await journal.close();
  });

  it('should go on after a session that was closed', async () => {
    const { bytes, events } = await wholeSession();
    const path = folder.path('closed.jsonl');
    writeFileSync(path, bytes);
    const { events: found, more, tornBytes } = await goOn(path, 100);
    expect(tornBytes).toBe(0);
    expect(found).toEqual(events);
    expect([...readSession(path)]).toEqual([...events, ...more]);
  });
});
