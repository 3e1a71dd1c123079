import { appendFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { encodeEvent } from '../../src/core/event-line.js';
import { followGrowing } from '../../src/store/growing-session.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const line = (seq: number): string =>
  encodeEvent(seq, { type: 'pin-reached', t: seq, pin: `${seq}`, line: 'GND' }, '0123456789abcdef');

describe('a session file that is still being written', () => {
  it('should be heard line by line, each once it is whole, from before it is there', async () => {
    const path = join(temporaryFolder(), 'walk.jsonl');
    const heard: number[] = [];
    onTestFinished(followGrowing(path, ({ seq }) => heard.push(seq)));
    const hears = (seqs: readonly number[]): Promise<void> =>
      vi.waitFor(() => expect(heard).toEqual(seqs), { timeout: 30_000 });

    writeFileSync(path, `${line(0)}\n${line(1)}\n${line(2).slice(0, 20)}`);
    await hears([0, 1]);
    appendFileSync(path, `${line(2).slice(20)}\nnot an event\n`);
    await hears([0, 1, 2]);
    appendFileSync(path, `${line(3)}\n`);
    await hears([0, 1, 2, 3]);
  });

  it('should not be heard any more once nobody listens', async () => {
    const path = join(temporaryFolder(), 'walk.jsonl');
    const heard: number[] = [];
    const stop = followGrowing(path, ({ seq }) => heard.push(seq));
    writeFileSync(path, `${line(0)}\n`);
    await vi.waitFor(() => expect(heard).toEqual([0]), { timeout: 30_000 });
    stop();
    appendFileSync(path, `${line(1)}\n`);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(heard).toEqual([0]);
  });
});
