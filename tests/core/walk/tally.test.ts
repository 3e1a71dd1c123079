import { describe, expect, it } from 'vitest';
import { tallyPins } from '../../../src/core/walk/tally.js';
import { ohms, tellStory } from '../../support/walk-story.js';

describe('tallyPins', () => {
  it('counts every pin once, by its last verdict', () => {
    const story = tellStory({
      lines: [
        ['GND', { kind: 'ground' }],
        ['D0_P', ohms(388)],
        ['CLK', ohms(742)],
        ['RST', ohms(5120)],
      ],
    });
    const none = { normal: 0, low: 0, high: 0, short: 0, open: 0, unsure: 0, wobble: 0, unread: 0 };
    expect(tallyPins(story.state)).toEqual({ ...none, unread: 4 });
    story.air(0.8).touch(0.2, 1.5).lift(0.9).touch(250.3, 1.5).act('next').lift(0.9).act('open');
    expect(tallyPins(story.state)).toEqual({ ...none, normal: 1, low: 1, open: 1, unread: 1 });
    story.act('go-to', { pin: '2' }).air(0.5).touch(388.4, 1.5);
    expect(tallyPins(story.state)).toEqual({ ...none, normal: 2, open: 1, unread: 1 });
  });
});
