// Rendered tones measured: frequency by counting zero crossings, edges, loudness and length.
import { describe, expect, it } from 'vitest';
import { renderTone } from '../../../src/core/cues/render-tone.js';
import { sheet } from '../../../src/core/cues/sheet.js';
import { type Note, type Tone, toneMs } from '../../../src/core/cues/tone.js';

const rate = 22050;
const note = (ms: number, fromHz: number, toHz = fromHz): Note => ({
  ms,
  fromHz,
  toHz,
  restMs: 45,
});

/** Mean frequency between the first and the last upward crossing of zero. */
const measuredHz = (samples: Int16Array, sampleRate = rate): number => {
  const ups: number[] = [];
  for (let i = 1; i < samples.length; i += 1) {
    const [before, now] = [samples[i - 1] as number, samples[i] as number];
    if (before < 0 && now >= 0) ups.push(i - now / (now - before));
  }
  const [first, last] = [ups[0] as number, ups.at(-1) as number];
  return ((ups.length - 1) * sampleRate) / (last - first);
};

const peakOf = (samples: Int16Array): number =>
  samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0) / 32767;

const tones = Object.entries(sheet).map(([kind, { tone }]) => [kind, tone] as const);

describe('renderTone', () => {
  it.each([330, 440, 880, 1047])('should sound at %d Hz', (hz) => {
    expect(measuredHz(renderTone([note(150, hz)], rate))).toBeCloseTo(hz, 0);
  });

  it('should sound at the right pitch at another sample rate', () => {
    expect(measuredHz(renderTone([note(150, 440)], 48000), 48000)).toBeCloseTo(440, 0);
  });

  it('should glide from one frequency to the other', () => {
    const samples = renderTone([note(240, 523, 1047)], rate);
    const part = Math.round(samples.length / 6);
    // The mean over the first and the last sixth of a straight glide lies a twelfth in from its ends.
    expect(measuredHz(samples.subarray(0, part)) / (523 + 524 / 12)).toBeCloseTo(1, 1);
    expect(measuredHz(samples.subarray(-part)) / (1047 - 524 / 12)).toBeCloseTo(1, 1);
  });

  it.each(tones)('should render %s note by note, with its silences', (_kind, tone: Tone) => {
    const samples = renderTone(tone, rate);
    expect(samples.length).toBe(Math.round((toneMs(tone) * rate) / 1000));
    let ms = 0;
    for (const each of tone) {
      const from = Math.ceil((ms * rate) / 1000);
      const to = Math.floor(((ms + each.ms) * rate) / 1000);
      const rest = Math.floor(((ms + each.ms + each.restMs) * rate) / 1000);
      expect(peakOf(samples.subarray(from, to))).toBeGreaterThan(0.18);
      expect(peakOf(samples.subarray(to + 1, rest))).toBe(0);
      const meanHz = (each.fromHz + each.toHz) / 2;
      expect(measuredHz(samples.subarray(from, to)) / meanHz).toBeCloseTo(1, 1);
      ms += each.ms + each.restMs;
    }
  });

  it.each(tones)('should render %s quietly and without a click', (_kind, tone: Tone) => {
    const samples = renderTone(tone, rate);
    expect(peakOf(samples)).toBeLessThan(0.25);
    // A jump of the second difference is what is heard as a click; a steady sine of the highest frequency
    // sets the measure, its harmonic included.
    const hz = Math.max(...tone.map(({ fromHz, toHz }) => Math.max(fromHz, toHz)));
    const bend = (2 * Math.PI * hz) / rate;
    const allowed = 32767 * (0.2 * (1 + 0.2 * 4) * bend * bend) + 150;
    const bends = [0, ...samples, 0].map((b, i, all) =>
      Math.abs((all[i - 1] ?? 0) - 2 * b + (all[i + 1] ?? 0)),
    );
    expect(Math.max(...bends)).toBeLessThan(allowed);
  });

  it('should be silent for no notes', () => {
    expect(renderTone([], rate)).toHaveLength(0);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 4 * 440])(
    'should refuse a sample rate of %d',
    (sampleRate) => {
      expect(() => renderTone([note(100, 440)], sampleRate)).toThrow(RangeError);
    },
  );
});
