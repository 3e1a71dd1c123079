// A session file opened to be played: every event in its place, wherever in the file it lies.
import { appendFileSync, readFileSync, truncateSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { encodeEvent } from '../../src/core/event-line.js';
import type { WalkEvent } from '../../src/core/events.js';
import { eventAt, placeAt, stretchEvents } from '../../src/core/replay/recording.js';
import { chainStart, prevOf } from '../../src/core/session-chain.js';
import { chainStep } from '../../src/store/chain-step.js';
import { FileError } from '../../src/store/file-error.js';
import { readSession } from '../../src/store/journal-reader.js';
import { type OpenRecording, openRecording } from '../../src/store/open-recording.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { note, opened, reading, resumed } from './sample-session.js';

/** A session file of a header and so many readings, now and then a note with letters beyond ASCII. */
const sessionFile = (count: number, between: readonly string[] = []): string => {
  const path = join(temporaryFolder(), 'session.jsonl');
  let chain = chainStart;
  const lines: string[] = [];
  const put = (line: string): void => {
    lines.push(line);
    chain = chainStep(chain, Buffer.from(line));
  };
  const write = (seq: number, event: WalkEvent): void =>
    put(encodeEvent(seq, event, prevOf(chain)));
  write(0, opened);
  for (let seq = 1; seq <= count; seq += 1) {
    if (seq === Math.floor(count / 2)) for (const line of between) put(line);
    write(seq, seq % 100 === 0 ? note(seq / 50, 'größer als 5 Ω – 漢字') : reading(seq / 50));
  }
  writeFileSync(path, `${lines.join('\n')}\n`);
  return path;
};

const open = (path: string): OpenRecording => {
  const recording = openRecording(path);
  onTestFinished(() => recording.close());
  return recording;
};

const count = 3 * stretchEvents + 17;

describe('openRecording', () => {
  it('should fetch the same events as reading the file from its beginning', () => {
    const path = sessionFile(count);
    const { recording, end } = open(path);
    const events = [...readSession(path)];
    expect(recording.count).toBe(count + 1);
    expect(end.events).toBe(count + 1);
    const places = [0, 1, stretchEvents - 1, stretchEvents, 2 * stretchEvents + 5, count, 100, 3];
    for (const at of places) expect(eventAt(recording, at)).toEqual(events[at]);
    expect(placeAt(recording, stretchEvents + 9).t).toBe(events[stretchEvents + 8]?.t);
  });

  it('should go on from memory of its own when the file has been removed', () => {
    const path = sessionFile(count);
    const { recording } = open(path);
    const before = eventAt(recording, 5000);
    unlinkSync(path);
    expect(eventAt(recording, 10)?.seq).toBe(10);
    expect(eventAt(recording, 5000)).toEqual(before);
  });

  it('should not see what is appended later', () => {
    const path = sessionFile(50);
    const { recording } = open(path);
    appendFileSync(path, `${encodeEvent(51, note(9, 'later'), '0'.repeat(16))}\n`);
    expect(recording.count).toBe(51);
    expect(eventAt(recording, 50)?.seq).toBe(50);
    expect(eventAt(recording, 51)).toBeNull();
  });

  it('should pass over a torn line that was kept aside, and events of unknown types', () => {
    const path = join(temporaryFolder(), 'session.jsonl');
    let chain = chainStart;
    let text = '';
    const put = (line: string): void => {
      text += `${line}\n`;
      chain = chainStep(chain, Buffer.from(line));
    };
    put(encodeEvent(0, opened, prevOf(chain)));
    put(encodeEvent(1, reading(1), prevOf(chain)));
    put('{"seq":2,"t":2,"type":"read');
    put(encodeEvent(2, resumed(10, 27), prevOf(chain)));
    put(`{"seq":3,"t":11,"type":"from-the-future","prev":"${prevOf(chain)}"}`);
    put(encodeEvent(4, reading(12), prevOf(chain)));
    writeFileSync(path, text);
    const { recording } = open(path);
    expect(recording.count).toBe(4);
    expect([0, 1, 2, 3].map((at) => eventAt(recording, at)?.seq)).toEqual([0, 1, 2, 4]);
  });

  it('should play what stands before an unfinished end, with or without a last newline', () => {
    const path = sessionFile(30);
    const whole = readFileSync(path);
    writeFileSync(path, whole.subarray(0, whole.length - 1));
    expect(open(path).recording.count).toBe(31);
    expect(eventAt(open(path).recording, 30)?.seq).toBe(30);
    writeFileSync(path, whole.subarray(0, whole.length - 20));
    const { recording, end } = open(path);
    expect(recording.count).toBe(30);
    expect(end.tornBytes).toBeGreaterThan(0);
  });

  it('should refuse a stretch that was changed under it, in one line', () => {
    const path = sessionFile(count);
    const { recording } = open(path);
    truncateSync(path, 5000);
    expect(() => eventAt(recording, count - 1)).toThrowError(FileError);
    expect(() => eventAt(recording, count - 1)).toThrowError(/changed while it was played/u);
  });

  it.each([
    ['damage', '{"seq":77,"t":1,"type":"act-taken","act":"note","prev":"x"}'],
    ['a line that is no event', 'nonsense'],
  ])('should refuse %s in the middle with its line', (_, line) => {
    const path = sessionFile(40, [line]);
    expect(() => openRecording(path)).toThrowError(FileError);
    expect(() => openRecording(path)).toThrowError(/:2[12]: error/u);
  });

  it.each([
    ['a file that is not there', '/nonexistent/session.jsonl', 'no such file'],
    ['a folder', '/', 'folder'],
  ])('should refuse %s', (_, path, says) => {
    expect(() => openRecording(path)).toThrowError(says);
  });

  it('should refuse an empty file', () => {
    const path = join(temporaryFolder(), 'session.jsonl');
    writeFileSync(path, '');
    expect(() => openRecording(path)).toThrowError('empty');
  });
});
