import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findRechecks } from '../../src/store/find-rechecks.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { sessionBegins } from '../../src/store/session-begins.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { opened } from './sample-session.js';

const sessionIn = async (folder: string, name: string, of?: string): Promise<string> => {
  const path = join(folder, name);
  const journal = createJournal(path);
  const before = { verdict: 'open', overload: true, standardUncertainty: null } as const;
  journal.append([
    of === undefined
      ? opened
      : {
          ...opened,
          recheck: {
            of: { file: 'walk.jsonl', begins: of, fingerprint: of },
            pins: [{ pin: '1', because: ['bad'], before }],
            press: [],
          },
        },
  ]);
  await journal.close();
  return path;
};

describe('findRechecks', () => {
  it('should find those beside the session and those where new sessions go, and nothing else', async () => {
    const beside = temporaryFolder();
    const usual = temporaryFolder();
    const session = await sessionIn(beside, 'walk.jsonl');
    const begins = sessionBegins(session) ?? '';
    const near = await sessionIn(beside, 'b.jsonl', begins);
    const far = await sessionIn(usual, 'a.jsonl', begins);
    await sessionIn(usual, 'of-another.jsonl', '0'.repeat(64));
    writeFileSync(join(usual, 'torn.jsonl'), '{"seq":0,"t":0,"ty');
    expect(findRechecks(session, begins, usual)).toEqual([near, far]);
  });

  it('should name each once where both are one folder, and pass over a folder that is not there', async () => {
    const folder = temporaryFolder();
    const session = await sessionIn(folder, 'walk.jsonl');
    const begins = sessionBegins(session) ?? '';
    const recheck = await sessionIn(folder, 'again.jsonl', begins);
    expect(findRechecks(session, begins, folder)).toEqual([recheck]);
    expect(findRechecks(session, begins, join(folder, 'none'))).toEqual([recheck]);
  });
});
