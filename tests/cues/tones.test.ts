// Tones through a recording player and a hand-moved clock: order, newest wins, levels, timing, and what happens
// when a player is missing, fails or hangs.
import { describe, expect, it } from 'vitest';
import { sheet } from '../../src/core/cues/sheet.js';
import { toneMs } from '../../src/core/cues/tone.js';
import type { WalkEvent } from '../../src/core/events.js';
import { english } from '../../src/core/words/english.js';
import { judged, player, rehearse } from './rehearse-player.js';

const held: WalkEvent = { type: 'walk-held', t: 1, reason: 'flag-hold', detail: '' };
const reached: WalkEvent = { type: 'pin-reached', t: 1, pin: '8', line: 'X' };
const finished: WalkEvent = {
  type: 'walk-finished',
  t: 1,
  tally: { normal: 1, low: 0, high: 0, short: 0, open: 0, unsure: 0, wobble: 0, unread: 0 },
};
const { unable } = english.spoken;

describe('tones', () => {
  it('should sound a verdict within 2 ms and start nothing while it is being told', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    expect(r.runs).toHaveLength(1);
    r.tell(judged('7', 'normal', 1), reached);
    expect(r.runs).toHaveLength(1);
    await r.pass(0.2);
    expect(r.heard().map(({ what }) => what)).toEqual(['normal']);
    const { fromS, toS, how } = r.runs[1] as (typeof r.runs)[number];
    expect(fromS - 0.1).toBeLessThan(0.002);
    expect((toS ?? 0) - fromS).toBeCloseTo(toneMs(sheet.normal.tone) / 1000, 3);
    expect(how).toBe('well');
  });

  it('should hear the cues of one moment after each other, the last verdict before the end', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(judged('40', 'short', 1, true), finished);
    await r.pass(2);
    const [first, second] = r.heard();
    expect([first?.what, second?.what]).toEqual(['short', 'finished']);
    expect(second?.run.fromS).toBeGreaterThanOrEqual(first?.run.toS ?? Number.NaN);
    expect(r.heard().every(({ run }) => run.how === 'well')).toBe(true);
  });

  it('should cut a verdict for the next one', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(judged('7', 'open', 1));
    await r.pass(0.1);
    r.tell(judged('8', 'normal', 2));
    await r.pass(0.3);
    const [open, normal] = r.heard();
    expect([open?.what, open?.run.how]).toEqual(['open-again', 'killed']);
    expect(normal?.what).toBe('normal');
    expect(normal?.run.fromS).toBeGreaterThanOrEqual(open?.run.toS ?? Number.NaN);
    expect((normal?.run.fromS ?? 0) - 0.2).toBeLessThan(0.003);
  });

  it('should let a stop sound to its end and then say the newest word that waited', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(held);
    await r.pass(0.05);
    r.tell(judged('7', 'low', 2));
    await r.pass(0.05);
    r.tell(judged('7', 'normal', 3));
    await r.pass(1);
    expect(r.heard().map(({ what, run }) => `${what} ${run.how}`)).toEqual([
      'held well',
      'normal well',
    ]);
  });

  it('should cut a word for a stop, and a stop for a newer stop', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(judged('7', 'low', 1));
    await r.pass(0.05);
    r.tell(held);
    await r.pass(0.05);
    r.tell({ type: 'walk-freed', t: 3, reason: 'flag-hold' });
    await r.pass(1);
    expect(r.heard().map(({ what, run }) => `${what} ${run.how}`)).toEqual([
      'low-again killed',
      'held killed',
      'freed well',
    ]);
  });

  it('should never have two sounds at once, whatever comes', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    for (let i = 0; i < 60; i += 1) {
      r.tell(i % 7 === 3 ? { ...held, t: i } : judged('7', i % 3 === 0 ? 'short' : 'normal', i));
      await r.pass(0.03 * (1 + (i % 5)));
    }
    await r.pass(2);
    const runs = r.heard().map(({ run }) => run);
    expect(runs.length).toBeGreaterThan(20);
    for (const [i, run] of runs.entries()) {
      expect(run.toS).not.toBeNull();
      if (i > 0) expect(run.fromS).toBeGreaterThanOrEqual(runs[i - 1]?.toS ?? Number.NaN);
    }
  });

  it('should say nothing of readings, and sound again what sounded last', async () => {
    const r = rehearse({ mode: 'tones' });
    r.player.repeat();
    await r.pass(0.1);
    r.tell({ type: 'reading-taken', t: 1, function: 'resistance', value: 5 });
    await r.pass(0.1);
    expect(r.heard()).toEqual([]);
    r.tell(judged('7', 'high', 2));
    await r.pass(1);
    r.player.repeat();
    await r.pass(1);
    r.player.repeat();
    await r.pass(1);
    expect(r.heard().map(({ what }) => what)).toEqual(['high-again', 'high-again', 'high-again']);
  });

  it('should cut whatever sounds for the cue of a paced test', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(held);
    await r.pass(0.05);
    r.tell({ type: 'cue-given', t: 2, cue: 'press' });
    await r.pass(0.5);
    const [alarm, press] = r.heard();
    expect([alarm?.run.how, press?.what, press?.run.how]).toEqual(['killed', 'press', 'well']);
    expect((press?.run.fromS ?? 0) - 0.15).toBeLessThan(0.003);
  });

  it('should wait with a cue until a player has been found', async () => {
    const slow = rehearse(
      { mode: 'tones', players: [player('slow'), player('works')] },
      (program) => (program === 'slow' ? { seconds: 0.5, well: false } : null),
    );
    slow.tell(judged('7', 'normal', 1));
    await slow.pass(0.3);
    slow.tell(judged('8', 'low', 2));
    await slow.pass(1);
    expect(slow.heard().map(({ what }) => what)).toEqual(['low-again']);
  });
});

describe('players that do not work', () => {
  const missing = (program: string) =>
    program === 'works' ? null : { seconds: 0.002, well: false };

  it('should be tried in order, with silence, until one works', async () => {
    const players = [player('a'), player('b'), player('works'), player('c')];
    const r = rehearse({ mode: 'tones', players }, missing);
    r.tell(judged('7', 'normal', 1));
    await r.pass(0.5);
    expect(r.runs.map(({ program }) => program)).toEqual(['a', 'b', 'works', 'works']);
    expect(r.heard().map(({ what }) => what)).toEqual(['normal']);
    expect(r.said).toEqual([]);
  });

  it('should leave the bell where none works, and say so once', async () => {
    const r = rehearse({ mode: 'tones', players: [player('a'), player('b')] }, missing);
    r.tell(judged('7', 'open', 1));
    await r.pass(1);
    r.tell(judged('7', 'open', 2, true));
    await r.pass(1);
    expect(r.rings).toHaveLength(4);
    expect(r.heard()).toEqual([]);
    expect(r.said).toEqual([unable.noPlayer]);
  });

  it('should leave the bell from the first failure on, ring for the cue that failed, and say so once', async () => {
    let plays = 0;
    const r = rehearse({ mode: 'tones' }, () => {
      plays += 1;
      return plays === 3 ? { seconds: 0.01, well: false } : null;
    });
    await r.pass(0.1);
    r.tell(judged('7', 'normal', 1));
    await r.pass(0.5);
    r.tell(judged('8', 'low', 2));
    await r.pass(1);
    r.tell(judged('8', 'low', 3, true));
    await r.pass(1);
    expect(r.heard().map(({ what, run }) => `${what} ${run.how}`)).toEqual([
      'normal well',
      'low-again badly',
    ]);
    expect(r.rings).toHaveLength(4);
    expect(r.said).toEqual([unable.playerFailed]);
  });

  it('should be killed where they hang, and the bell rings', async () => {
    let plays = 0;
    const r = rehearse({ mode: 'tones' }, () => {
      plays += 1;
      return plays === 2 ? { seconds: null, well: true } : null;
    });
    await r.pass(0.1);
    r.tell(judged('7', 'normal', 1));
    await r.pass(6);
    expect(r.heard().map(({ run }) => run.how)).toEqual(['killed']);
    expect(r.rings).toHaveLength(1);
    expect(r.said).toEqual([unable.playerFailed]);
  });

  it('should not be taken to have failed where a newer cue cut them', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    for (const t of [1, 2, 3]) {
      r.tell(judged('7', 'open', t));
      await r.pass(0.05);
    }
    await r.pass(1);
    expect(r.heard().map(({ run }) => run.how)).toEqual(['killed', 'killed', 'well']);
    expect(r.said).toEqual([]);
  });

  it('should not be needed where no file can be written: the bell rings', async () => {
    const r = rehearse({
      mode: 'tones',
      makeFolder: () => {
        throw new Error('no space left');
      },
    });
    r.tell(judged('7', 'normal', 1));
    await r.pass(1);
    expect([r.runs.length, r.rings.length, r.said]).toEqual([0, 1, [unable.noPlayer]]);
  });
});

describe('the bell', () => {
  it('should ring as often as the cue asks, apart enough to be counted', async () => {
    const r = rehearse({ mode: 'bell' });
    r.tell({ type: 'question-asked', t: 1, question: 'open', pin: '8' });
    await r.pass(2);
    expect(r.rings).toHaveLength(3);
    for (const [i, at] of r.rings.entries()) {
      if (i > 0) expect(at - (r.rings[i - 1] ?? 0)).toBeGreaterThan(0.2);
    }
    expect([r.runs.length, r.said]).toEqual([0, []]);
  });

  it('should stop ringing for a newer cue', async () => {
    const r = rehearse({ mode: 'bell' });
    r.tell({ type: 'question-asked', t: 1, question: 'open', pin: '8' });
    await r.pass(0.1);
    r.tell(judged('8', 'normal', 2));
    await r.pass(2);
    expect(r.rings).toHaveLength(2);
  });
});

describe('cues that are off', () => {
  it('should start nothing, ring nothing and say nothing', async () => {
    const r = rehearse({ mode: 'off' });
    r.tell(judged('8', 'open', 2), held);
    r.player.repeat();
    await r.pass(1);
    await r.player.close();
    expect([r.runs.length, r.rings.length, r.said, r.folderIsThere()]).toEqual([0, 0, [], false]);
  });
});

describe('closing', () => {
  it('should cut the sound and remove every file', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(judged('7', 'short', 1));
    await r.pass(0.1);
    expect(r.folderIsThere()).toBe(true);
    r.tell({ type: 'session-closed', t: 2, reason: 'left' });
    await r.player.close();
    expect(r.heard().map(({ run }) => run.how)).toEqual(['killed']);
    expect(r.folderIsThere()).toBe(false);
    r.tell(judged('8', 'short', 3));
    await r.pass(0.1);
    expect(r.heard()).toHaveLength(1);
  });

  it('should let a finished walk be heard to its end', async () => {
    const r = rehearse({ mode: 'tones' });
    await r.pass(0.1);
    r.tell(judged('40', 'short', 1, true), finished);
    r.tell({ type: 'session-closed', t: 1, reason: 'finished' });
    const closed = r.player.close();
    await r.pass(2);
    await closed;
    expect(r.heard().map(({ what, run }) => `${what} ${run.how}`)).toEqual([
      'short well',
      'finished well',
    ]);
    expect(r.folderIsThere()).toBe(false);
  });

  it('should not wait longer than last words take', async () => {
    const r = rehearse({ mode: 'tones', players: [player('hangs')] }, () => ({
      seconds: null,
      well: true,
    }));
    r.tell(finished, { type: 'session-closed', t: 1, reason: 'finished' });
    const closed = r.player.close();
    await r.pass(0.5);
    expect(r.runs.map(({ how }) => how)).toEqual(['playing']);
    await r.pass(6);
    await closed;
    expect(r.runs.map(({ how }) => how)).not.toContain('playing');
    expect(r.folderIsThere()).toBe(false);
  });

  it('should end a search for a player that is still under way, silently', async () => {
    const r = rehearse({ mode: 'tones', players: [player('hangs'), player('works')] }, (program) =>
      program === 'hangs' ? { seconds: null, well: true } : null,
    );
    await r.pass(0.1);
    await r.player.close();
    expect(r.runs.map(({ how }) => how)).toEqual(['killed']);
    expect([r.said, r.folderIsThere()]).toEqual([[], false]);
  });
});
