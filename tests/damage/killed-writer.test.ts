// kill -9 in the middle of writing: whatever was said to be written is in the file, and the session goes on.
import { afterEach, beforeEach, expect, it } from 'vitest';
import { checkFile } from '../../src/store/check-file.js';
import { readSession } from '../../src/store/journal-reader.js';
import { resumeJournal } from '../../src/store/resume-journal.js';
import { resumed, temporaryFolder } from '../store/sample-session.js';
import { startChild } from './start-child.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

it('should lose nothing that was said, however often it is killed', {
  timeout: 60_000,
}, async () => {
  const path = folder.path('killed.jsonl');
  let highest = -1;
  for (const afterEvents of [3, 40, 7, 150]) {
    const child = startChild([path, '1000000', '0']);
    const goal = highest + afterEvents;
    await child.heard((word) => Number(word) >= goal);
    child.process.kill('SIGKILL');
    await child.ended;
    const numbers = child.said.map(Number);
    const last = numbers.at(-1) ?? -1;
    expect(numbers).toEqual(Array.from(numbers, (_, nth) => highest + 1 + nth));

    const seqs = [...readSession(path)].map(({ seq }) => seq);
    expect(seqs).toEqual(seqs.map((_, nth) => nth));
    expect(seqs.length).toBeGreaterThan(last);
    expect(checkFile(path).problems.every(({ level }) => level === 'warning')).toBe(true);

    const { journal, tornBytes, lastT, notices } = resumeJournal(path);
    expect(notices[0]).toBe(
      `the session was left by process ${child.process.pid}, which has ended; it is taken over`,
    );
    journal.append([resumed(lastT + 1, tornBytes)]);
    await journal.close();
    expect(checkFile(path).problems).toEqual([]);
    highest = seqs.length;
  }
});
