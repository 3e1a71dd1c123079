// What the walk makes of a touch that ends before it is certain, and of a walk that ends. Times are common practice,
// no source.
import { describe, expect, it } from 'vitest';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const rail = { kind: 'supply', charges: true } as const;
const expected = (nominal: number) => ({ expect: { resistance: { nominal, tolerance: 0.25 } } });

const lines = [
  ['GND', { kind: 'ground' }],
  ['V1', { ...rail, ...expected(840) }],
  ['D0', ohms(388)],
  ['CLK', ohms(742)],
] as const;

/** A rail that charges for seconds, under a meter that scatters too much to be sure of its end. */
const charging = { creep: { share: -0.95, tauS: 1.3 } };
const begun = (rate: number, seed: number): WalkStory =>
  tellStory({ lines, rate, noise: 0.004, seed }).air(0.8).touch(0.2, 2).lift(0.9);

describe('a touch that was left before it was certain', () => {
  it.each([
    [2.5, 1],
    [2.5, 4],
    [10, 1],
    [10, 7],
    [20, 3],
  ])(
    'is captured as it is left when it was nearly settled, at %d readings/s, seed %d',
    (rate, seed) => {
      const story = begun(rate, seed).touch(838, 7.2, charging);
      expect(story.of('touch-captured')).toHaveLength(1);
      story.air(2 / rate);
      expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2']);
      const value = story.of('pin-settled')[1]?.value ?? 0;
      expect(Math.abs(value - 838)).toBeLessThan(0.01 * 838);
      expect(story.state.contact.rest).toBeNull();
      expect(story.here()).toBe('3');
      story.air(0.8).touch(388.4, 2);
      expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2', '3']);
    },
  );

  it('is not captured while it had far to go', () => {
    const story = begun(4, 1).touch(838, 2.5, charging).lift(0.9);
    expect(story.of('touch-captured')).toHaveLength(1);
    expect(story.here()).toBe('2');
  });

  it('is not taken for a pin of its own when it was left for no longer than a slip', () => {
    const story = begun(4, 1).touch(838, 3, charging).air(0.25).touch(838, 8, charging).lift(0.9);
    story.touch(388.4, 2);
    expect(story.of('question-asked')).toEqual([]);
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2', '3']);
  });
});

describe('the end of a walk', () => {
  const alike = [
    ['GND', { kind: 'ground' }],
    ['A', ohms(470)],
    ['B', ohms(470)],
  ] as const;

  /** Two lines that read alike, with a lift between them that this slow meter cannot tell from a slip. */
  const doubtful = (): WalkStory =>
    tellStory({ lines: alike, rate: 4 })
      .air(0.8)
      .touch(0.2, 2)
      .lift(0.9)
      .touch(470.4, 2)
      .lift(0.5)
      .touch(470.1, 2)
      .lift(0.9);

  it('leaves a doubt standing as long as more may come', () => {
    const story = doubtful();
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2']);
    expect(story.state.question?.question).toBe('same-or-next');
  });

  it('tells which pin was the last one when nothing more will come', () => {
    const story = doubtful().link('ended');
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2', '3']);
    expect(story.of('walk-finished')).toHaveLength(1);
  });

  it('says nothing of pins that were not touched', () => {
    const story = tellStory({ lines: alike }).air(0.8).touch(0.2, 2).lift(0.9).link('ended');
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1']);
    expect(story.of('walk-finished')).toEqual([]);
  });

  it('lets the last capture be put right while the probe rests on it', () => {
    const story = tellStory({ lines: lines.slice(0, 1) })
      .air(0.8)
      .touch(0.4, 1);
    expect(story.state.stage).toBe('finished');
    const long = tellStory({ lines: [['A', ohms(470)]], rate: 20 })
      .air(0.5)
      .touch(465, 0.6);
    expect(long.state.stage).toBe('finished');
    long.touch(471, 3);
    expect(long.of('pin-settled').at(-1)?.value).toBeCloseTo(471, 0);
  });
});

describe('an answer that tells the place', () => {
  it('nothing was read, and one of the pins in doubt shows nothing by design', () => {
    const lines = [
      ['GND', { kind: 'ground' }],
      ['A', ohms(470)],
      ['B', ohms(470)],
      ['NC', { kind: 'unused', expect: { resistance: 'overload' } }],
      ['C', ohms(470)],
    ] as const;
    const story = tellStory({ lines, rate: 4 }).air(0.8).touch(0.2, 2).lift(0.9);
    story.touch(470.4, 2).lift(0.7).touch(470.1, 2);
    expect(story.of('pin-settled')).toHaveLength(2);
    story.air(4).act('open').air(0.6);
    expect(story.verdicts()).toMatchObject({ 'pin 3': 'normal', 'pin 4': 'normal' });
    expect(story.here()).toBe('5');
  });
});
