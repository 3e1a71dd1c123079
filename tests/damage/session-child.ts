// A program of its own that writes a session: begins it or goes on in it, says the number of each event once
// `append` has returned, and waits with a word while it cannot write. Ends after the given number of events.
// Usage: session-child.ts PATH COUNT PAUSE_MS
import { existsSync, writeSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import type { WalkEvent } from '../../src/core/events.js';
import { JournalError } from '../../src/store/journal-error.js';
import { createJournal, type JournalWriter } from '../../src/store/journal-writer.js';
import { resumeJournal } from '../../src/store/resume-journal.js';
import { opened, reading, resumed } from '../store/sample-session.js';

const [path = '', count = '0', pauseMs = '0'] = process.argv.slice(2);
const say = (word: string): void => void writeSync(1, `${word}\n`);

const open = (): { journal: JournalWriter; first: WalkEvent; t: number } => {
  if (!existsSync(path)) return { journal: createJournal(path), first: opened, t: 0 };
  const { journal, tornBytes, lastT } = resumeJournal(path);
  return { journal, first: resumed(lastT + 1, tornBytes), t: lastT + 1 };
};

const write = async (journal: JournalWriter, event: WalkEvent): Promise<void> => {
  for (;;) {
    try {
      for (const { seq } of journal.append([event])) say(`${seq}`);
      journal.sync();
      return;
    } catch (error) {
      if (!(error instanceof JournalError)) throw error;
      say(`! ${error.reason} ${error.message}`);
      await pause(20);
    }
  }
};

try {
  const { journal, first, t } = open();
  await write(journal, first);
  for (let nth = 1; nth < Number(count); nth += 1) {
    await write(journal, reading(t + nth / 10));
    if (Number(pauseMs) > 0) await pause(Number(pauseMs));
  }
  await journal.close();
  say('done');
} catch (error) {
  say(`! ${error instanceof JournalError ? error.reason : 'unexpected'} ${String(error)}`);
}
