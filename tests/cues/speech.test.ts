// Speech through a recording synthesiser and player: rendered ahead, said at once, and what happens where a
// phrase or the whole synthesiser is missing.
import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../src/core/events.js';
import { english } from '../../src/core/words/english.js';
import { type Synthesiser, systemSynthesisers } from '../../src/cues/synthesisers.js';
import { spokenWav } from './recording-start.js';
import { judged, opened, type Rehearsal, rehearse, start } from './rehearse-player.js';

const { unable } = english.spoken;

const synthesiser = (title: string): Synthesiser => ({
  title,
  command: (text, path, language) => ({ program: title, args: [language, path, text] }),
});

/** Speaks 0.6 s a phrase and takes 20 ms to render it. */
const speaks = (program: string, args: readonly string[]) =>
  program === 'speaks'
    ? { seconds: 0.02, well: true, writes: { path: args[1] ?? '', bytes: spokenWav(0.6) } }
    : null;

const speaking = (): Rehearsal =>
  rehearse({ mode: 'speech', synthesisers: [synthesiser('speaks')] }, speaks);

const rendered = (r: Rehearsal): string[] =>
  r.runs.filter(({ program }) => program === 'speaks').map(({ path }) => path);

/** What was played: the words of a speech file, the name of a tone. */
const played = (r: Rehearsal): string[] => {
  const words = new Map(
    r.runs.filter(({ args }) => args.length === 3).map(({ args }) => [args[1], args[2]] as const),
  );
  return r.heard().map(({ what, run }) => (what === '?' ? `"${words.get(run.path)}"` : what));
};

describe('speech', () => {
  it("should render the next pin's phrases ahead, likeliest first and one at a time", async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(2);
    const texts = rendered(r);
    expect(texts.slice(0, 4)).toEqual([
      'touch ground',
      'one, normal',
      'two, normal',
      'three, normal',
    ]);
    expect(texts).toEqual(
      expect.arrayContaining(['one: open?', 'one, short; again', 'meter gone']),
    );
    expect(new Set(texts).size).toBe(texts.length);
    const runs = r.runs.filter(({ program }) => program === 'speaks');
    for (const [i, run] of runs.entries()) {
      if (i > 0) expect(run.fromS).toBeGreaterThanOrEqual(runs[i - 1]?.toS ?? Number.NaN);
    }
  });

  it('should say a phrase that was rendered ahead at once, without its tone', async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(2);
    const before = r.clock.now();
    r.tell(judged('1', 'normal', 2));
    await r.pass(1);
    expect(played(r)).toEqual(['"touch ground"', '"one, normal"']);
    expect((r.heard()[1]?.run.fromS ?? 9) - before).toBeLessThan(0.003);
  });

  it('should begin a stop with its tone, and then say it', async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(2);
    r.tell({ type: 'walk-paused', t: 2, reason: 'link-lost' });
    await r.pass(2);
    expect(played(r).slice(1)).toEqual(['link-lost', '"meter gone"']);
  });

  it('should sound the tone of a phrase nobody foresaw, and say it as soon as it is rendered', async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(2);
    r.tell(judged('33', 'low', 2));
    await r.pass(0.01);
    expect(played(r).slice(1)).toEqual(['low-again']);
    await r.pass(1.5);
    expect(played(r).slice(1)).toEqual(['low-again', '"thirty-three, low; again"']);
    r.player.repeat();
    await r.pass(1);
    expect(played(r).slice(3)).toEqual(['"thirty-three, low; again"']);
  });

  it('should not say it late where something newer has come', async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(2);
    r.tell(judged('33', 'low', 2));
    await r.pass(0.05);
    r.tell(judged('1', 'normal', 3));
    await r.pass(2);
    expect(played(r).slice(1)).toEqual(['low-again', '"one, normal"']);
  });

  it('should keep a bounded number of files', async () => {
    const r = speaking();
    for (let cursor = 0; cursor < 40; cursor += 1) {
      r.player.follow(judged(`${cursor}`, 'normal', cursor), { ...start, cursor });
      await r.pass(0.7);
    }
    const { readdirSync } = await import('node:fs');
    expect(rendered(r).length).toBeGreaterThan(300);
    expect(readdirSync(r.folder).length).toBeLessThan(260);
  });

  it('should leave nothing behind when it is closed while rendering', async () => {
    const r = speaking();
    r.tell(opened);
    await r.pass(0.2);
    await r.player.close();
    expect(r.runs.filter(({ how }) => how === 'playing')).toEqual([]);
    expect([r.folderIsThere(), r.said]).toEqual([false, []]);
    const count = r.runs.length;
    await r.pass(0.5);
    expect(r.runs).toHaveLength(count);
  });
});

describe('synthesisers that do not work', () => {
  const closedMouth: WalkEvent = judged('1', 'normal', 2);

  it.each([
    ['are missing', { seconds: 0.002, well: false }],
    ['report success and write nothing', { seconds: 0.01, well: true }],
    ['hang', { seconds: null, well: true }],
  ])('should leave tones where they %s, and say so once', async (_how, behaviour) => {
    const r = rehearse({ mode: 'speech', synthesisers: [synthesiser('mute')] }, (program) =>
      program === 'mute' ? behaviour : null,
    );
    r.tell(opened);
    await r.pass(6);
    r.tell(closedMouth);
    await r.pass(1);
    expect(played(r)).toEqual(['touch-ground', 'normal']);
    expect(r.said).toEqual([unable.noVoice]);
  });

  it('should be tried in order', async () => {
    const synthesisers = [synthesiser('mute'), synthesiser('speaks')];
    const r = rehearse({ mode: 'speech', synthesisers }, (program, args) =>
      program === 'mute' ? { seconds: 0.002, well: false } : speaks(program, args),
    );
    r.tell(opened);
    await r.pass(2);
    expect(played(r)).toEqual(['"touch ground"']);
    expect(r.said).toEqual([]);
  });

  it('should be given up at the first phrase that cannot be rendered, with a word once', async () => {
    let renders = 0;
    const r = rehearse(
      { mode: 'speech', synthesisers: [synthesiser('speaks')] },
      (program, args) => {
        if (program === 'speaks') renders += 1;
        return program === 'speaks' && renders > 1
          ? { seconds: 0.01, well: false }
          : speaks(program, args);
      },
    );
    r.tell(opened);
    await r.pass(2);
    r.tell(judged('1', 'normal', 2));
    await r.pass(1);
    r.tell(judged('2', 'low', 3));
    await r.pass(1);
    expect(played(r)).toEqual(['"touch ground"', 'normal', 'low-again']);
    expect(r.said).toEqual([unable.voiceFailed]);
  });
});

describe("the system's synthesisers", () => {
  it('should get the text as one argument of its own, after every option', () => {
    expect(systemSynthesisers.map(({ title }) => title)).toEqual(['espeak-ng', 'espeak', 'say']);
    for (const { command } of systemSynthesisers) {
      const { args } = command('seven, normal', '/tmp/x.wav', 'en');
      expect(args.at(-1)).toBe('seven, normal');
      expect(args).toContain('/tmp/x.wav');
    }
  });
});
