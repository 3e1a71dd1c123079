// Two separate grounds are touched before the walk begins. A slip on one of them is not a second one.
import { describe, expect, it } from 'vitest';
import { evolve } from '../../../src/core/walk/evolve.js';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
] as const;

const opened = (rate = 20): WalkStory => tellStory({ lines, rate, groundCheck: true }).air(0.8);

describe('the ground check', () => {
  it.each([20, 10, 3])(
    'is good after two touches with a lift between, at %d readings/s',
    (rate) => {
      const story = opened(rate).touch(0.2, 2);
      expect(story.of('ground-touched')).toMatchObject([{ which: 1 }]);
      expect(story.of('pin-reached')).toEqual([]);
      story.lift(0.9).touch(0.3, 2);
      expect(story.of('ground-touched')).toMatchObject([{ which: 1 }, { which: 2 }]);
      expect(story.of('ground-checked')).toMatchObject([{ outcome: 'good' }]);
      expect(story.of('pin-reached')).toMatchObject([{ pin: '1' }]);
    },
  );

  it.each([
    ['one ground', (story: WalkStory) => story.touch(0.2, 2), 'ground-check'],
    ['both', (story: WalkStory) => story.touch(0.2, 2).lift(0.9).touch(0.3, 2), 'walking'],
    ['none, and skipped', (story: WalkStory) => story.act('skip'), 'walking'],
  ] as const)('a session closed after %s goes on there', (_, touched, stage) => {
    const story = touched(opened());
    const { state } = story.act('quit');
    expect(state.stage).toBe('closed');
    const resumed = {
      type: 'session-resumed',
      t: 40,
      program: '1',
      wallTime: '',
      zone: 'UTC',
      tornBytes: 0,
    } as const;
    expect(evolve(state, resumed).stage).toBe(stage);
  });

  it.each([20, 3])('takes a slip for no second touch, at %d readings/s', (rate) => {
    const story = opened(rate).touch(0.2, 2).slip(0.2).slip(0.15);
    expect(story.of('ground-touched')).toMatchObject([{ which: 1 }]);
    expect(story.of('ground-checked')).toEqual([]);
  });

  it('asks for a longer lift after a hasty one, and then takes a hasty one for what it is', () => {
    const story = opened().touch(0.2, 2).lift(0.4).touch(0.3, 2);
    expect(story.of('ground-repeated')).toMatchObject([{ value: 0.3 }]);
    expect(story.of('ground-checked')).toEqual([]);
    story.lift(0.4).touch(0.3, 2);
    expect(story.of('ground-repeated')).toHaveLength(1);
    expect(story.of('ground-checked')).toMatchObject([{ outcome: 'good' }]);
  });

  it('says so when something else is touched, and does not count it', () => {
    const story = opened().touch(388.4, 1.5);
    expect(story.of('ground-missed')).toMatchObject([{ value: 388.4 }]);
    expect(story.of('ground-touched')).toEqual([]);
    story.lift(0.9).touch(0.2, 1.5).lift(0.9).touch(0.2, 1.5);
    expect(story.of('ground-checked')).toMatchObject([{ outcome: 'good' }]);
    expect(story.of('pin-settled')).toEqual([]);
  });

  it('the second ground, held on, is not the first pin', () => {
    const story = opened().touch(0.2, 1.5).lift(0.9).touch(0.2, 6).lift(0.9).touch(388.4, 1.5);
    expect(story.of('pin-settled')).toMatchObject([{ pin: '1', value: 388.4 }]);
  });

  it('can be skipped, and refuses "open" and "next" with words', () => {
    const story = opened().act('open').act('next');
    expect(story.of('act-refused').map(({ reason }) => reason)).toEqual([
      expect.stringMatching(/two grounds/),
      expect.stringMatching(/two grounds/),
    ]);
    story.act('skip').touch(388.4, 1.5);
    expect(story.of('ground-checked')).toMatchObject([{ outcome: 'skipped' }]);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal' });
  });

  it('never asks about opens, however long nothing is touched', () => {
    expect(opened().air(60).of('question-asked')).toEqual([]);
  });
});
