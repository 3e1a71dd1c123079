// Whose turn it is: newest wins, a higher level is not cut, and never two sounds at once.
import { describe, expect, it } from 'vitest';
import type { Cue, CueKind, Level } from '../../src/core/cues/cue.js';
import type { Moment } from '../../src/core/cues/moment.js';
import { sheet } from '../../src/core/cues/sheet.js';
import { createTurns } from '../../src/cues/turns.js';

const moment = (kind: CueKind, level: Level = sheet[kind].level): Moment => {
  const cue: Cue = { kind, ...sheet[kind], speech: kind };
  return { level, cues: [cue] };
};

const rehearse = () => {
  const log: string[] = [];
  let end: () => void = () => undefined;
  let sounding = 0;
  const turns = createTurns((sound, signal) => {
    const name = sound.cues[0]?.kind ?? '';
    log.push(name);
    sounding += 1;
    expect(sounding).toBe(1);
    return new Promise((resolve) => {
      const over = (how: string): void => {
        log.push(`${name} ${how}`);
        sounding -= 1;
        resolve();
      };
      end = () => over('ended');
      // Even a killed player takes a little while to go.
      signal.addEventListener('abort', () => setImmediate(() => over('cut')));
    });
  });
  const settle = (): Promise<void> =>
    new Promise((resolve) => setImmediate(() => setImmediate(resolve)));
  return { turns, log, end: () => end(), settle };
};

describe('turns', () => {
  it('should cut a word for a newer word, and begin it only when the old one is gone', async () => {
    const { turns, log, settle } = rehearse();
    turns.take(moment('normal'));
    turns.take(moment('short-again'));
    expect(log).toEqual(['normal']);
    await settle();
    expect(log).toEqual(['normal', 'normal cut', 'short-again']);
  });

  it('should let only the newest of several that come at once follow', async () => {
    const { turns, log, settle } = rehearse();
    for (const kind of ['normal', 'low', 'high', 'short'] as const) turns.take(moment(kind));
    await settle();
    expect(log).toEqual(['normal', 'normal cut', 'short']);
  });

  it('should keep the newest word back until a stop has ended', async () => {
    const { turns, log, settle, end } = rehearse();
    turns.take(moment('held'));
    turns.take(moment('normal'));
    turns.take(moment('low'));
    turns.take(moment('place'));
    await settle();
    expect(log).toEqual(['held']);
    end();
    await settle();
    expect(log).toEqual(['held', 'held ended', 'low']);
  });

  it('should cut anything for a stop', async () => {
    const { turns, log, settle } = rehearse();
    turns.take(moment('held'));
    turns.take(moment('normal'));
    turns.take(moment('link-lost'));
    await settle();
    expect(log).toEqual(['held', 'held cut', 'link-lost']);
  });

  it('should be quiet once nothing sounds or waits', async () => {
    const { turns, log, settle, end } = rehearse();
    await turns.quiet();
    turns.take(moment('held'));
    turns.take(moment('normal'));
    let quiet = false;
    const waited = turns.quiet().then(() => {
      quiet = true;
    });
    end();
    await settle();
    expect([quiet, log.at(-1)]).toEqual([false, 'normal']);
    end();
    await waited;
    expect(log.at(-1)).toBe('normal ended');
  });

  it('should cut what sounds, forget what waits and take no more once stopped', async () => {
    const { turns, log, settle } = rehearse();
    turns.take(moment('held'));
    turns.take(moment('normal'));
    turns.stop();
    turns.take(moment('link-lost'));
    await turns.quiet();
    await settle();
    expect(log).toEqual(['held', 'held cut']);
  });
});
