// A reading that does not hold still: named as such, and never mistaken for a value by a chance run.
import { describe, expect, it } from 'vitest';
import { ohms, type StoryLines, tellStory } from '../../support/walk-story.js';

const lines: StoryLines = [
  ['GND', { kind: 'ground' }],
  ['D0', ohms(388)],
];

const scattered = (rate: number, noise: number, seed: number) =>
  tellStory({ lines, rate, noise, seed }).air(0.8).touch(0.2, 2).lift(0.9).touch(388.4, 14);

describe('a contact that scatters', () => {
  it.each([
    [20, 0.06],
    [10, 0.06],
    [20, 0.12],
    [10, 0.12],
  ])('should be called a wobble at %d readings/s and a scatter of %d', (rate, noise) => {
    for (const seed of [1, 2, 3]) {
      expect(scattered(rate, noise, seed).verdicts()).toMatchObject({ 'pin 2': 'wobble' });
    }
  });

  it('should hold the pin until it is touched again', () => {
    const story = scattered(20, 0.06, 1);
    const judged = story.of('pin-judged').filter(({ pin }) => pin === '2');
    expect(judged.at(-1)).toMatchObject({ agreed: false, advice: 'hold-longer' });
    expect(story.here()).toBe('2');
  });
});
