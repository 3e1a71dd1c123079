// A link that goes away pauses the walk; it goes on at the same pin when the link is back.
import { describe, expect, it } from 'vitest';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
] as const;

const atSecond = (): WalkStory => tellStory({ lines }).air(0.8).touch(0.2, 1.5).lift(0.9);
const pins = (story: WalkStory): string[] => story.of('pin-settled').map(({ pin }) => pin);

describe('a lost link', () => {
  it('pauses; readings meanwhile are kept and decide nothing', () => {
    const story = atSecond().link('lost');
    expect(story.of('walk-paused')).toMatchObject([{ reason: 'link-lost' }]);
    const before = story.events.length;
    story.touch(388.4, 3).lift(1).touch(741, 3).air(8);
    expect(new Set(story.events.slice(before).map(({ type }) => type))).toEqual(
      new Set(['reading-taken']),
    );
    expect(story.here()).toBe('2');
  });

  it('when it is back the walk continues at the same pin', () => {
    const story = atSecond().link('lost').air(2).link('returned');
    expect(story.of('walk-continued')).toMatchObject([{ pin: '2' }]);
    story.air(0.5).touch(388.4, 1.5).lift(0.9).touch(741, 1.5);
    expect(pins(story)).toEqual(['1', '2', '3']);
  });

  it('a second loss while paused is no second pause', () => {
    const story = atSecond().link('lost').link('lost').link('returned').link('returned');
    expect(story.of('walk-paused')).toHaveLength(1);
    expect(story.of('walk-continued')).toHaveLength(1);
  });

  it('its return does not undo a pause that was asked for', () => {
    const story = atSecond().act('pause').link('lost').link('returned').touch(388.4, 2);
    expect(story.of('walk-continued')).toEqual([]);
    expect(pins(story)).toEqual(['1']);
  });

  it('no question is asked for the time it was away', () => {
    const story = atSecond().link('lost').air(20).link('returned').air(1);
    expect(story.of('question-asked')).toEqual([]);
  });
});

describe('a silent meter', () => {
  it('pauses until it speaks again', () => {
    const story = atSecond().link('silent');
    expect(story.of('walk-paused')).toMatchObject([{ reason: 'meter-silent' }]);
    story.air(0.5).touch(388.4, 1.5);
    expect(story.of('walk-continued')).toMatchObject([{ pin: '2' }]);
    expect(pins(story)).toEqual(['1', '2']);
  });
});
