// The walk judges nothing while the meter shows what must not be judged, says why, and goes on by itself.
import { describe, expect, it } from 'vitest';
import { ohms, type TouchOptions, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
] as const;

const atSecond = (): WalkStory => tellStory({ lines }).air(0.8).touch(0.2, 1.5).lift(0.9);

const heldBy: readonly (readonly [string, TouchOptions])[] = [
  ['flag-hold', { flags: ['hold'] }],
  ['flag-relative', { flags: ['relative'] }],
  ['flag-minmax', { flags: ['minmax'] }],
  ['wrong-function', { function: 'diode' }],
  ['wrong-function', { polarity: 'black-walks' }],
];

describe('the walk is held', () => {
  it.each(heldBy)('by %s %o: nothing is captured, then it is freed', (reason, options) => {
    const story = atSecond().touch(388.4, 5, options);
    expect(story.of('walk-held').map((held) => held.reason)).toEqual([reason]);
    expect(story.of('walk-held')[0]?.detail).toMatch(/\w+ \w+/);
    expect(story.of('touch-captured')).toHaveLength(1);
    expect(story.of('walk-freed')).toEqual([]);
    story.air(0.5).touch(388.4, 1.5);
    expect(story.of('walk-freed').map((freed) => freed.reason)).toEqual([reason]);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2', value: 388.4 });
  });

  it('by negative readings: residual charge, freed by the next good one', () => {
    const story = atSecond().touch(-14.2, 2);
    expect(story.of('walk-held')).toMatchObject([{ reason: 'negative' }]);
    expect(story.of('walk-held')[0]?.detail).toMatch(/discharge/);
    expect(story.of('touch-captured')).toHaveLength(1);
    story.air(1).touch(388.4, 1.5);
    expect(story.of('walk-freed')).toMatchObject([{ reason: 'negative' }]);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2', value: 388.4 });
  });

  it('not by a single negative reading, which may be a glitch', () => {
    const story = atSecond().touch(-14.2, 0.1).touch(388.4, 1.5);
    expect(story.of('walk-held')).toEqual([]);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2' });
  });

  it('by a display that repeats one number, freed when it moves', () => {
    const story = atSecond().touch(388.4, 20);
    expect(story.of('walk-held')).toMatchObject([{ reason: 'frozen-display' }]);
    story.air(1).touch(741, 1.5);
    expect(story.of('walk-freed')).toMatchObject([{ reason: 'frozen-display' }]);
    expect(story.of('pin-settled').map(({ pin, value }) => [pin, value])).toEqual([
      ['1', 0.2],
      ['2', 388.4],
      ['3', 741],
    ]);
  });

  it('not by a display that flickers in its last digits', () => {
    const story = tellStory({ lines, noise: 0.001 }).air(0.8).touch(0.2, 1.5).lift(0.9);
    expect(story.touch(388.4, 20).of('walk-held')).toEqual([]);
  });

  it('a low battery alone stops nothing', () => {
    const story = atSecond().touch(388.4, 1.5, { flags: ['low-battery'] });
    expect(story.of('walk-held')).toEqual([]);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2', value: 388.4 });
  });
});
