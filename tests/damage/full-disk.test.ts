// A disk that fills up in the middle of a line, at every byte of a session: nothing of a refused batch counts,
// what was written stays whole, and the same batch goes in once there is room.
import { readFileSync, statSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Numbered } from '../../src/core/events.js';
import { type DiskCalls, realDisk } from '../../src/store/disk-calls.js';
import { readSession } from '../../src/store/journal-reader.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { opened, sample, temporaryFolder } from '../store/sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const failure = (code: string) => Object.assign(new Error(code), { code });

/** Holds `room` bytes; the write that passes them is cut short, the next one fails. */
const smallDisk = (path: string, code = 'ENOSPC') => {
  const state = { room: 0, canTruncate: true };
  const calls: DiskCalls = {
    write: (fd, bytes, offset) => {
      const left = state.room - statSync(path).size;
      if (left <= 0) throw failure(code);
      return realDisk.write(fd, bytes.subarray(0, offset + left), offset);
    },
    truncate: (fd, size) => {
      if (!state.canTruncate) throw failure('EIO');
      realDisk.truncate(fd, size);
    },
    sync: realDisk.sync,
  };
  return { state, calls };
};

const sessionSize = async (): Promise<number> => {
  const path = folder.path('measure.jsonl');
  const journal = createJournal(path);
  journal.append(sample);
  await journal.close();
  return statSync(path).size;
};

describe.each([
  { name: 'one event a batch', step: 1, batches: sample.map((event) => [event]) },
  { name: 'three events a batch', step: 7, batches: [sample.slice(0, 3), sample.slice(3)] },
])('a disk that is full, $name', ({ step, batches }) => {
  it.each([true, false])(
    'should cost no event at any byte (part taken back at once: %s)',
    async (canTruncate) => {
      const size = await sessionSize();
      const headerEnd = readFileSync(folder.path('measure.jsonl')).indexOf(0x0a);
      let refusals = 0;
      for (let room = headerEnd - 5; room < size; room += step) {
        const path = folder.path(`${canTruncate}-${room}.jsonl`);
        const { state, calls } = smallDisk(path);
        const journal = createJournal(path, calls);
        const written: Numbered[] = [];
        state.room = room;
        for (const batch of batches) {
          try {
            state.canTruncate = canTruncate;
            written.push(...journal.append(batch));
          } catch (error) {
            refusals += 1;
            expect(error).toMatchObject({ name: 'JournalError', reason: 'full', canRetry: true });
            expect(() => journal.append(batch)).toThrow();
            state.canTruncate = true;
            expect(() => journal.append(batch)).toThrow(/the disk is full; free some space/);
            expect(wholeEvents(path)).toEqual(written);
            state.room = 1e6;
            written.push(...journal.append(batch));
          }
        }
        await journal.close();
        expect(wholeEvents(path)).toEqual(sample.map((event, seq) => ({ seq, ...event })));
        expect(statSync(path).size).toBe(size);
      }
      expect(refusals).toBe(Math.ceil((size - headerEnd + 5) / step));
    },
  );
});

const wholeEvents = (path: string): Numbered[] =>
  statSync(path).size === 0 ? [] : [...readSession(path)];

it.each([
  ['ENOSPC', 'full', /the disk is full; free some space, then go on/],
  ['EDQUOT', 'full', /your disk quota is used up; free some space/],
  ['EFBIG', 'full', /may not grow any larger; raise the limit/],
  ['EIO', 'disk', /the disk reported an error \(EIO\); check the disk/],
])('should say %s in words', (code, reason, says) => {
  const path = folder.path('s.jsonl');
  const { calls } = smallDisk(path, code);
  const journal = createJournal(path, calls);
  expect(() => journal.append([opened])).toThrow(says);
  expect(() => journal.append([opened])).toThrow(expect.objectContaining({ reason, path }));
  return journal.close();
});

it('should take a disk that writes nothing for a full one', async () => {
  const path = folder.path('s.jsonl');
  const journal = createJournal(path, { ...realDisk, write: () => 0 });
  expect(() => journal.append([opened])).toThrow(/the disk is full/);
  await journal.close();
});
