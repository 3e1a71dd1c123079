// When the walk steps to the next pin, and when it must not. Lengths of slips, lifts and neighbour touches are
// common practice, no source.
import { describe, expect, it } from 'vitest';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
  ['RST', ohms(5120)],
] as const;

const begun = (rate = 10): WalkStory => tellStory({ lines, rate });
const settledPins = (story: WalkStory): string[] =>
  story.of('pin-settled').map(({ pin, value }) => `${pin}: ${value?.toFixed(1)}`);

describe('the walk steps', () => {
  it('begins at the first pin, and steps when its touch has settled', () => {
    const story = begun();
    expect(story.events).toEqual([{ type: 'pin-reached', t: 0, pin: '1', line: 'GND' }]);
    story.air(0.8).touch(0.2, 1.5);
    expect(settledPins(story)).toEqual(['1: 0.2']);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal' });
    expect(story.here()).toBe('2');
  });

  it.each([20, 10, 3])(
    'a lift of 0.8 s to another value is the next pin, at %d readings/s',
    (rate) => {
      const story = begun(rate).air(0.8).touch(0.2, 2).lift(0.8).touch(388.4, 2).lift(0.8);
      expect(settledPins(story)).toEqual(['1: 0.2', '2: 388.4']);
      expect(story.here()).toBe('3');
    },
  );

  it.each([20, 3])('a slip of 0.2 s is no step, at %d readings/s', (rate) => {
    const story = begun(rate).air(0.8).touch(0.2, 2).lift(0.8).touch(388.4, 2).slip(0.2).slip(0.2);
    expect(settledPins(story)).toEqual(['1: 0.2', '2: 388.4']);
    expect(story.here()).toBe('3');
  });

  it('goes on rightly after slips: the next lift is the next pin', () => {
    const story = begun(20).air(0.8).touch(0.2, 2).lift(0.8).touch(388.4, 1.5).slip(0.2);
    story.lift(0.9).touch(741, 1.5).slip(0.15).lift(0.9).touch(5127, 1.5);
    expect(settledPins(story)).toEqual(['1: 0.2', '2: 388.4', '3: 741.0', '4: 5127.0']);
  });

  it('a neighbour touched for 60 ms on the way is never captured', () => {
    for (const rate of [50, 20, 10, 3]) {
      const story = begun(rate).air(0.8).touch(0.2, 2).lift(0.8).touch(741, 0.06).touch(388.4, 2);
      expect(settledPins(story)).toEqual(['1: 0.2', '2: 388.4']);
      expect(story.of('touch-captured').map(({ value }) => value)).not.toContain(741);
    }
  });

  it('a neighbour touched first and left through the air is not captured either', () => {
    const story = begun(20).air(0.8).touch(0.2, 2).lift(0.8).touch(741, 0.06).air(0.2);
    story.touch(388.4, 2);
    expect(settledPins(story)).toEqual(['1: 0.2', '2: 388.4']);
  });

  it('says the same with a scattering meter', () => {
    for (const seed of [1, 2, 3]) {
      const story = tellStory({ lines, rate: 10, noise: 0.001, seed });
      story.air(0.8).touch(0.2, 1.5).lift(0.9).touch(388.4, 1.5).slip(0.2).lift(0.9);
      story.touch(741, 1.5).lift(0.9).touch(5127, 1.5);
      expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2', '3', '4']);
      expect(new Set(Object.values(story.verdicts()))).toEqual(new Set(['normal']));
    }
  });

  it('finishes with the tally of what was found, and stays finished when nothing else comes', () => {
    const story = begun().air(0.8).touch(0.2, 1.5).lift(0.9).touch(388.4, 1.5).lift(0.9);
    story.touch(741, 1.5).act('skip').lift(0.9);
    expect(story.of('walk-finished')).toMatchObject([{ tally: { normal: 3, unread: 1, open: 0 } }]);
    expect(story.state.stage).toBe('finished');
    expect(story.here()).toBeUndefined();
    story.air(12);
    expect(story.of('question-asked')).toEqual([]);
  });
});

describe('a touch that is not normal', () => {
  const atSecond = (): WalkStory => begun().air(0.8).touch(0.2, 1.5).lift(0.9);

  it('holds its pin until the repeat touch agrees', () => {
    const story = atSecond().touch(250.3, 1.5);
    expect(story.of('pin-judged').at(-1)).toMatchObject({
      pin: '2',
      verdict: 'low',
      agreed: false,
    });
    expect(story.here()).toBe('2');
    story.lift(0.9).touch(250.5, 1.5);
    expect(story.of('pin-judged').at(-1)).toMatchObject({ pin: '2', verdict: 'low', agreed: true });
    expect(story.here()).toBe('3');
  });

  it('is not agreed to by a slip', () => {
    const story = atSecond().touch(250.3, 1.5).slip(0.2);
    expect(story.of('pin-judged').at(-1)).toMatchObject({ pin: '2', agreed: false });
    expect(story.here()).toBe('2');
  });

  it('is replaced by a repeat touch that is normal: it was a bad contact', () => {
    const story = atSecond().touch(520.3, 1.5).lift(0.9).touch(388.4, 1.5);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'normal' });
    expect(story.here()).toBe('3');
  });

  it('is taken as it is on "next"', () => {
    const story = atSecond().touch(250.3, 1.5).act('next');
    expect(story.of('pin-judged').at(-1)).toMatchObject({ pin: '2', verdict: 'low', agreed: true });
    expect(story.here()).toBe('3');
    expect(story.of('act-refused')).toEqual([]);
    story.touch(250.3, 1.5);
    expect(story.here()).toBe('3');
    story.lift(0.9).touch(741, 1.5);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'low', 'pin 3': 'normal' });
  });
});
