// The session file deleted, moved, replaced, cut or written to by someone else in the middle of a session.
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { createJournal, type JournalWriter } from '../../src/store/journal-writer.js';
import { opened, reading, temporaryFolder } from '../store/sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
let path: string;
let journal: JournalWriter;
beforeEach(() => {
  folder = temporaryFolder();
  mkdirSync(folder.path('in'));
  path = folder.path('in/s.jsonl');
  journal = createJournal(path);
  journal.append([opened, reading(1), reading(2)]);
});
afterEach(() => folder.remove());

const seqsAt = (file: string) => [...readSession(file)].map(({ seq }) => seq);

/** Syncing looks at the place, without anyone waiting for it. */
const synced = async (): Promise<void> => {
  journal.sync();
  await new Promise((resolve) => setTimeout(resolve, 500));
};

describe('a session file that is gone', () => {
  it('should be missed at the next event, and put back whole by going on', async () => {
    unlinkSync(path);
    expect(() => journal.append([reading(3)])).toThrow(
      expect.objectContaining({
        reason: 'removed',
        canRetry: true,
        message: `session file ${path}: it was deleted while it was being written; going on puts it back whole`,
      }),
    );
    expect(existsSync(path)).toBe(false);
    expect(journal.append([reading(3)])).toMatchObject([{ seq: 3 }]);
    expect(journal.append([reading(4)])).toMatchObject([{ seq: 4 }]);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2, 3, 4]);
    expect(checkFile(path)).toMatchObject({ problems: [], fingerprint: journal.fingerprint });
  });

  it('should be missed after it was moved, which only a sync can see', async () => {
    renameSync(path, folder.path('elsewhere.jsonl'));
    await synced();
    expect(() => journal.append([reading(3)])).toThrow(/deleted or moved away/);
    journal.append([reading(3)]);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2, 3]);
    expect(seqsAt(folder.path('elsewhere.jsonl'))).toEqual([0, 1, 2]);
  });

  it('should not be put back over another file', async () => {
    unlinkSync(path);
    writeFileSync(path, 'not ours');
    await synced();
    expect(() => journal.append([reading(3)])).toThrow();
    expect(() => journal.append([reading(3)])).toThrow(/none is ever overwritten/);
    expect(readFileSync(path, 'utf8')).toBe('not ours');
    unlinkSync(path);
    expect(journal.append([reading(3)])).toMatchObject([{ seq: 3 }]);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2, 3]);
  });

  it('should tell when another file took its place', async () => {
    renameSync(path, folder.path('kept.jsonl'));
    writeFileSync(path, 'not ours');
    await synced();
    expect(() => journal.append([reading(3)])).toThrow(
      expect.objectContaining({ reason: 'replaced' }),
    );
    renameSync(folder.path('kept.jsonl'), path);
    expect(journal.append([reading(3)])).toMatchObject([{ seq: 3 }]);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2, 3]);
  });

  it('should wait for its folder when that is gone too', async () => {
    rmSync(dirname(path), { recursive: true });
    expect(() => journal.append([reading(3)])).toThrow(/deleted/);
    expect(() => journal.append([reading(3)])).toThrow(/make the folder first/);
    mkdirSync(dirname(path));
    expect(journal.append([reading(3)])).toMatchObject([{ seq: 3 }]);
    expect(existsSync(`${path}.lock`)).toBe(true);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2, 3]);
  });

  it('should be put back by closing', async () => {
    unlinkSync(path);
    await journal.close();
    expect(seqsAt(path)).toEqual([0, 1, 2]);
  });

  it('should fail the closing when it cannot be put back', async () => {
    rmSync(dirname(path), { recursive: true });
    await expect(journal.close()).rejects.toThrow(/make the folder first/);
  });
});

describe('a session file someone else changed', () => {
  it.each([
    ['written to', () => appendFileSync(path, 'x\n')],
    ['cut', () => truncateSync(path, 10)],
  ])('should not be touched again once it was %s', async (_, change) => {
    change();
    const after = readFileSync(path);
    for (let attempt = 0; attempt < 2; attempt += 1) {
      expect(() => journal.append([reading(3)])).toThrow(
        expect.objectContaining({ reason: 'changed', canRetry: false }),
      );
    }
    await expect(journal.close()).rejects.toThrow(/another program changed it/);
    expect(readFileSync(path)).toEqual(after);
    expect(existsSync(`${path}.lock`)).toBe(false);
  });
});
