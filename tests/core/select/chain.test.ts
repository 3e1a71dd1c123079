import { describe, expect, it } from 'vitest';
import type { ProfileLine } from '../../../src/core/profile/profile-format.js';
import { likeliestPlace, selectChain } from '../../../src/core/select/chain.js';
import { ohms, type StoryLines, tellStory } from '../../support/walk-story.js';

const chain: NonNullable<ProfileLine['chain']> = [
  { joint: 'J1 pin 2' },
  { shunt: { part: 'TV1' } },
  { joint: 'FL1 pad 1' },
  { part: 'FL1' },
  { joint: 'FL1 pad 2' },
  { chip: 'U1' },
];
const lines: StoryLines = [
  ['A', ohms(1200)],
  ['B', ohms(400, { chain })],
  ['C', ohms(410)],
];

const begun = () => tellStory({ lines }).lift(0.5).touch(1200, 1.2);

describe('the chain of a line', () => {
  it('should be none while nothing is in question, or where nothing but the pin is known', () => {
    expect(selectChain(begun().state, 1)).toBeNull();
    const { state } = begun().air(4).act('open');
    expect(selectChain(state, 2)).toBeNull();
    expect(selectChain(state, 7)).toBeNull();
  });

  it('should carry a probability at each place, and move with every probe', () => {
    const story = begun().air(4).act('open');
    const before = selectChain(story.state, 1);
    expect(before?.places.map(({ name }) => name)).toEqual([
      'J1 pin 2',
      'TV1',
      'FL1 pad 1',
      'FL1',
      'FL1 pad 2',
      'U1',
    ]);
    expect(before === null ? null : likeliestPlace(before)?.name).toBe('J1 pin 2');
    story.act('probe', { line: 'B', part: 'FL1', side: 'near' }).air(4).act('open');
    const after = selectChain(story.state, 1);
    expect(after?.places[0]?.probability).toBeLessThan(0.1);
    expect(after?.places[4]?.probability).toBeGreaterThan(before?.places[4]?.probability ?? 1);
  });
});
