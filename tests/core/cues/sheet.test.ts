// The tones as data: every one can be told from every other without hearing pitch, and none startles or tires.
import { describe, expect, it } from 'vitest';
import type { CueKind } from '../../../src/core/cues/cue.js';
import { levels } from '../../../src/core/cues/cue.js';
import { sheet } from '../../../src/core/cues/sheet.js';
import { type Tone, toneMs } from '../../../src/core/cues/tone.js';

const entries = Object.entries(sheet) as [CueKind, (typeof sheet)[CueKind]][];
const pairs = entries.flatMap((a, i) => entries.slice(i + 1).map((b) => [a, b] as const));

/** Told apart by ear without pitch: another number of notes, or one of them clearly longer. */
const sameRhythm = (a: Tone, b: Tone): boolean =>
  a.length === b.length &&
  a.every(({ ms }, i) => {
    const other = b[i]?.ms ?? 0;
    return Math.max(ms, other) / Math.min(ms, other) < 1.5;
  });

const kinds = (test: (kind: CueKind) => boolean): CueKind[] =>
  entries.map(([kind]) => kind).filter(test);
const agains = kinds((kind) => kind.endsWith('-again'));
const questions = kinds((kind) => kind.startsWith('question-'));

describe('the sheet of tones', () => {
  it('should give every cue a rhythm of its own', () => {
    expect(pairs.length).toBeGreaterThan(700);
    const alike = pairs
      .filter(([[, a], [, b]]) => sameRhythm(a.tone, b.tone))
      .map(([[a], [b]]) => `${a} / ${b}`);
    expect(alike).toEqual([]);
  });

  it('should keep a normal capture to 60-90 ms and make every other verdict longer', () => {
    const normal = toneMs(sheet.normal.tone);
    expect(normal).toBeGreaterThanOrEqual(60);
    expect(normal).toBeLessThanOrEqual(90);
    for (const kind of ['low', 'high', 'short', 'open', 'unsure', 'wobble', 'unread'] as const) {
      expect(toneMs(sheet[kind].tone)).toBeGreaterThan(2 * normal);
    }
  });

  it('should end a settled verdict with the note that means a normal capture, after the figure for "again"', () => {
    expect(agains).toHaveLength(6);
    for (const again of agains) {
      const settled = sheet[again.replace('-again', '') as CueKind].tone;
      const figure = sheet[again].tone;
      expect(settled.at(-1)).toEqual(sheet.normal.tone[0]);
      expect(settled.map(({ ms, fromHz }) => [ms, fromHz]).slice(0, -1)).toEqual(
        figure.map(({ ms, fromHz }) => [ms, fromHz]),
      );
      expect(figure.at(-1)).not.toEqual(sheet.normal.tone[0]);
    }
  });

  it('should end questions, and nothing else, with a rise of an octave', () => {
    expect(questions).toHaveLength(4);
    for (const [kind, { tone }] of entries) {
      const last = tone.at(-1);
      expect((last?.toHz ?? 0) / (last?.fromHz ?? 1) > 1.9).toBe(questions.includes(kind));
    }
  });

  it('should stay short, and within what old ears and small loudspeakers carry', () => {
    for (const [kind, { tone, level }] of entries) {
      expect(toneMs(tone), kind).toBeLessThan(1000);
      if (level === levels.echo) expect(toneMs(tone), kind).toBeLessThan(130);
      for (const { fromHz, toHz, ms } of tone) {
        expect(Math.min(fromHz, toHz), kind).toBeGreaterThan(250);
        expect(Math.max(fromHz, toHz), kind).toBeLessThan(1200);
        expect(ms).toBeGreaterThan(0);
      }
    }
  });

  it('should ring the bell once for what goes on and more often for what needs the technician', () => {
    expect(sheet.normal.bells).toBe(1);
    for (const again of agains) expect(sheet[again].bells).toBe(2);
    for (const question of questions) expect(sheet[question].bells).toBe(3);
    expect(sheet['link-lost'].bells).toBe(4);
    expect(sheet.heard.bells).toBe(0);
  });
});
