// A reading counts once it has nowhere left to go: in-circuit capacitance creeps, supply rails charge for seconds.
// Times are common practice, no source; half a percent of remainder is a design decision.
import { describe, expect, it } from 'vitest';
import { ohms, type StoryLines, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  [
    'VDD',
    { kind: 'supply', charges: true, expect: { resistance: { nominal: 900, tolerance: 0.3 } } },
  ],
  ['CLK', ohms(742)],
] as const;

const atSecond = (rate: number, noise = 0): WalkStory =>
  tellStory({ lines, rate, noise }).air(0.8).touch(0.2, 2).lift(0.9);

const captureOf = (story: WalkStory, pin: string) =>
  story.of('pin-settled').find((settled) => settled.pin === pin);

describe('a creep with 30 % to go', () => {
  it.each([
    [20, 0.15],
    [20, 0.45],
    [10, 0.3],
    [10, 0.6],
    [3, 0.5],
  ])(
    'at %d readings/s, time constant %d s, is not captured before it is nearly there',
    (rate, tauS) => {
      const story = atSecond(rate);
      const landed = story.t;
      story.touch(388.4, 9, { creep: { share: -0.3, tauS } });
      const settled = captureOf(story, '2');
      if (settled === undefined) throw new Error('pin 2 was not captured');
      const remainder = 0.3 * Math.exp(-(settled.to - landed) / tauS);
      expect(remainder).toBeLessThan(0.0055);
      expect(Math.abs((settled.value ?? 0) / 388.4 - 1)).toBeLessThan(0.01);
    },
  );

  it('from above it is the same', () => {
    const story = atSecond(10);
    const landed = story.t;
    story.touch(388.4, 6, { creep: { share: 0.3, tauS: 0.4 } });
    const settled = captureOf(story, '2');
    expect(0.3 * Math.exp(-((settled?.to ?? 0) - landed) / 0.4)).toBeLessThan(0.0055);
    expect(Math.abs((settled?.value ?? 0) / 388.4 - 1)).toBeLessThan(0.01);
  });

  it('its final value counts with a scattering meter too', () => {
    for (const seed of [1, 2, 3, 4]) {
      const story = tellStory({ lines, rate: 10, noise: 0.001, seed });
      story
        .air(0.8)
        .touch(0.2, 2)
        .lift(0.9)
        .touch(388.4, 6, { creep: { share: -0.3, tauS: 0.4 } });
      const last = story.of('pin-settled').at(-1);
      expect(last?.pin).toBe('2');
      expect(Math.abs((last?.value ?? 0) / 388.4 - 1)).toBeLessThan(0.01);
    }
  });
});

describe('a supply line that charges with a time constant of 2 s', () => {
  const charging = (rate: number): WalkStory => atSecond(rate).touch(388.4, 1.5).lift(0.9);

  it.each([20, 10, 3])('is not captured early, nor called short, at %d readings/s', (rate) => {
    const story = charging(rate);
    story.touch(880, 4, { creep: { share: -0.98, tauS: 2 } });
    expect(captureOf(story, '3')).toBeUndefined();
    story.touch(880, 16, { creep: { share: -0.98 * Math.exp(-2), tauS: 2 } });
    const settled = captureOf(story, '3');
    expect(Math.abs((settled?.value ?? 0) / 880 - 1)).toBeLessThan(0.015);
    expect(story.of('pin-judged').filter(({ pin }) => pin === '3')).toMatchObject([
      { verdict: 'normal' },
    ]);
  });

  it('left while it charges, it was not read', () => {
    const story = charging(10)
      .touch(880, 1.5, { creep: { share: -0.98, tauS: 2 } })
      .lift(0.9);
    expect(captureOf(story, '3')).toBeUndefined();
    expect(story.here()).toBe('3');
  });
});

describe('a change of range', () => {
  it('begins the reading anew: values of two ranges are never in one capture', () => {
    const story = atSecond(10).touch(430.2, 0.25, { range: 6000, resolution: 1 });
    const changed = story.t;
    story.touch(388.4, 2.5, { range: 600, resolution: 0.1 });
    const settled = captureOf(story, '2');
    expect(settled).toMatchObject({ range: 600, resolution: 0.1, value: 388.4 });
    expect(settled?.from).toBeGreaterThanOrEqual(changed - 1e-9);
  });

  it('shown as blanks, it tells nothing by itself', () => {
    const story = atSecond(10).blank(1.5).touch(388.4, 1.5, { range: 600, resolution: 0.1 });
    expect(captureOf(story, '2')).toMatchObject({ value: 388.4 });
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2']);
  });
});

describe('a reading that does not hold still', () => {
  it('is a wobble, with the advice to hold longer, and keeps its pin', () => {
    const story = atSecond(10);
    for (let i = 0; i < 30; i += 1) story.touch(383.4, 0.3).touch(393.1, 0.3);
    expect(story.of('pin-judged').filter(({ pin }) => pin === '2')).toMatchObject([
      { verdict: 'wobble', advice: 'hold-longer', agreed: false },
    ]);
    expect(story.here()).toBe('2');
  });
});

describe('a creep that a slip has spoiled', () => {
  it('should not be captured from a few readings that lie apart, however quiet the bench was', () => {
    const shown = { range: 6000, resolution: 0.1 };
    const values = Array.from({ length: 12 }, (_, i) => Math.round(400 * 1.2 ** i));
    const quiet: StoryLines = values.map((value, i) => [`L${i}`, ohms(value)]);
    const story = tellStory({
      lines: [['GND', { kind: 'ground' }], ...quiet, ['INT', ohms(5600)]],
      rate: 2.5,
      noise: 0.001,
    })
      .air(0.8)
      .touch(0.2, 2, shown);
    for (const value of values) story.lift(1.2).touch(value, 2.4, shown);
    story.lift(0.8);
    // From the virtual bench: the line creeps up, and a slip is mixed into the third and fourth reading.
    for (const value of [5058.9, 5251.4, 5880.9, 5783.6]) story.touch(value, 0.4, shown);
    expect(story.here()).toBe('14');
    for (const value of [5571.2, 5590.1, 5595.8, 5597.2, 5596.9]) story.touch(value, 0.4, shown);
    const settled = captureOf(story, '14')?.value ?? 0;
    expect(Math.abs(settled / 5597 - 1)).toBeLessThan(0.01);
  });
});
