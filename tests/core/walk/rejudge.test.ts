import { describe, expect, it } from 'vitest';
import { rejudge } from '../../../src/core/walk/rejudge.js';
import { ohms, storyProfile, tellStory } from '../../support/walk-story.js';

const walked = () =>
  tellStory({
    lines: [
      ['D0_P', ohms(388)],
      ['CLK', ohms(742)],
      ['RST', ohms(5120)],
    ],
  })
    .air(0.8)
    .touch(388.4, 1.5)
    .lift(0.9)
    .act('open');

const other = (lines: Parameters<typeof storyProfile>[0]) =>
  storyProfile(lines, { function: 'resistance', polarity: 'red-walks' });

describe('rejudge', () => {
  it('by the same profile says the same, for captured pins only', () => {
    const { state, opened } = walked();
    const again = rejudge(state, opened.profile.content);
    expect(again.map(({ judged, before }) => [judged.pin, judged.verdict, before])).toEqual([
      ['1', 'normal', 'normal'],
      ['2', 'open', 'open'],
    ]);
  });

  it('by other limits gives other verdicts, and keeps the stored ones beside them', () => {
    const { state } = walked();
    const profile = other([
      ['D0_P', ohms(600)],
      ['CLK', { kind: 'unused' }],
      ['RST', ohms(5120)],
    ]);
    const again = rejudge(state, profile);
    expect(again.map(({ judged, before }) => [judged.pin, judged.verdict, before])).toEqual([
      ['1', 'low', 'normal'],
      ['2', 'normal', 'open'],
    ]);
    expect(again[0]?.judged.expected).toEqual({ nominal: 600, low: 540, high: 660 });
    expect(state.pins[0]).toMatchObject({ verdict: 'normal', value: 388.4 });
  });

  it('leaves out pins that the profile does not know', () => {
    expect(rejudge(walked().state, other([['D0_P', ohms(388)]]))).toHaveLength(1);
  });
});
