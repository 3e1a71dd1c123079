// Where the walk does not know whether a touch was the same pin or the next: it says so of every touch, goes by what
// comes after, and does not stand in its own way.
import { describe, expect, it } from 'vitest';
import { ohms, type StoryLines, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines: StoryLines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(2070, { mate: 'D0_N' })],
  ['D0_N', ohms(2071, { mate: 'D0_P' })],
  ['NC', { kind: 'unused', expect: { resistance: 'overload' } }],
  ['RST', ohms(5120)],
  ['INT', ohms(7450)],
];

/** Two lines alike with a gap between them that may have been a slip or a lift. */
const inDoubt = (...some: StoryLines): WalkStory =>
  tellStory({ lines: some.length > 0 ? some : lines, rate: 10 })
    .air(0.8)
    .touch(0.2, 1)
    .lift(0.7)
    .touch(2068.2, 1)
    .air(0.5)
    .touch(2068.4, 1);

const asked = (story: WalkStory): string[] =>
  story.of('question-asked').map(({ question, pin }) => `${question} ${pin}`);

describe('a touch that may be the same pin or the next', () => {
  it('should be asked about', () => {
    expect(asked(inDoubt())).toEqual(['same-or-next 3']);
  });

  it('should not keep the walk from asking about a line that shows nothing by design', () => {
    const story = inDoubt().air(4);
    expect(asked(story)).toEqual(['same-or-next 3', 'open 4']);
  });

  it('should be known from the answer there', () => {
    const story = inDoubt().air(4).touch(0.2, 0.4).air(0.5).touch(0.2, 0.4).air(1);
    expect(story.verdicts()).toEqual({
      'pin 1': 'normal',
      'pin 2': 'normal',
      'pin 3': 'normal',
      'pin 4': 'normal',
    });
    expect(story.here()).toBe('5');
  });

  it('should be asked about once more with the next touch that tells nothing', () => {
    const story = inDoubt(
      ['GND', { kind: 'ground' }],
      ['D0_P', ohms(2070, { mate: 'D0_N' })],
      ['D0_N', ohms(2071, { mate: 'D0_P' })],
      ['RST', ohms(5120)],
      ['INT', ohms(7450)],
    )
      .lift(0.9)
      .touch(1353, 1);
    expect(asked(story)).toEqual(['same-or-next 3', 'same-or-next 3']);
    const known = story.lift(0.9).touch(7450, 1);
    expect(known.verdicts()).toEqual({
      'pin 1': 'normal',
      'pin 2': 'normal',
      'pin 3': 'normal',
      'pin 4': 'low',
      'pin 5': 'normal',
    });
  });
});

describe('two pins of one line', () => {
  it('should be told apart from one pin touched twice by a lift between them', () => {
    const supply = { kind: 'supply', expect: { resistance: { nominal: 146, tolerance: 0.2 } } };
    const story = tellStory({
      lines: [
        ['GND', { kind: 'ground' }],
        ['V3', supply as never],
        ['V3', supply as never],
        ['RST', ohms(5120)],
      ],
      rate: 10,
    })
      .air(0.8)
      .touch(0.2, 1)
      .lift(0.7)
      .touch(147, 1.5)
      .lift(0.7)
      .touch(147.05, 1.5);
    expect(asked(story)).toEqual([]);
    expect(story.here()).toBe('4');
  });
});
