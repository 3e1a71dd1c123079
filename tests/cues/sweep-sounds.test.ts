import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createSoundFolder } from '../../src/cues/sound-folder.js';
import { soundFolderPrefix, sweepSounds } from '../../src/cues/sweep-sounds.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** The number of a process that was and is no more. */
const endedPid = (): number => spawnSync(process.execPath, ['--version']).pid;

describe('sounds that a killed program left', () => {
  it('should be taken away by the next one, and nothing else', () => {
    const parent = temporaryFolder();
    const left = join(parent, `${soundFolderPrefix(endedPid())}abc`);
    mkdirSync(left);
    writeFileSync(join(left, '1.wav'), 'sound');
    const others = [`${soundFolderPrefix(process.pid)}abc`, 'pinwalk-cues-mine', '123-abc'];
    for (const other of others) mkdirSync(join(parent, other));
    sweepSounds(parent);
    expect(readdirSync(parent).sort()).toEqual(others.sort());
  });

  it('should go when a folder for new ones is made', () => {
    const parent = temporaryFolder();
    mkdirSync(join(parent, `${soundFolderPrefix(endedPid())}abc`));
    const folder = createSoundFolder(parent);
    expect(readdirSync(parent)).toHaveLength(1);
    folder.remove();
    expect(readdirSync(parent)).toEqual([]);
  });
});
