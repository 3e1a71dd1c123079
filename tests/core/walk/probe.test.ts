import { describe, expect, it } from 'vitest';
import type { Act } from '../../../src/core/inputs.js';
import type { ProfileLine } from '../../../src/core/profile/profile-format.js';
import { rerun } from '../../../src/core/walk/rerun.js';
import { describe as inWords } from '../../../src/core/words/describe.js';
import { english } from '../../../src/core/words/english.js';
import { ohms, type StoryLines, tellStory, type WalkStory } from '../../support/walk-story.js';

const chain: NonNullable<ProfileLine['chain']> = [
  { joint: 'J1 pin 2' },
  { joint: 'FL1 pad 1' },
  { part: 'FL1' },
  { joint: 'FL1 pad 2' },
  { chip: 'U1' },
];

const lines: StoryLines = [
  ['A', ohms(1200)],
  ['B', ohms(400, { chain })],
  ['C', ohms(410)],
  ['GND', { kind: 'ground' }],
  ['D', ohms(2400)],
];

const farSide: Omit<Act, 'act'> = { line: 'B', part: 'FL1', side: 'far' };

/** Pin 2 is open, and the walk waits for pin 3. */
const withAnOpen = (): WalkStory =>
  tellStory({ lines }).lift(0.5).touch(1200, 1.2).air(4).act('open');
const probed = (): WalkStory => withAnOpen().act('probe', farSide).lift(0.8).touch(402, 1.5);

describe('a probe beside the walk', () => {
  it('should take the next settled touch as the reading of the place, and as no pin', () => {
    const story = probed();
    expect(story.of('place-judged')).toMatchObject([
      { line: 'B', part: 'FL1', side: 'far', value: 402, verdict: 'normal' },
    ]);
    expect(story.of('probe-ended')).toMatchObject([{ reason: 'done' }]);
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2']);
    expect(story.here()).toBe('3');
  });

  it('should go on at the same pin, though the place read as that pin does', () => {
    const story = probed().lift(0.6).touch(410, 1.2).lift(0.6).touch(0.1, 1.2).lift(0.6);
    story.touch(2400, 1.2);
    expect(story.verdicts()).toEqual({
      'pin 1': 'normal',
      'pin 2': 'open',
      'pin 3': 'normal',
      'pin 4': 'normal',
      'pin 5': 'normal',
    });
    expect(story.of('question-asked').map(({ question }) => question)).toEqual(['open']);
  });

  it('should count what it found: the break is on the pin side then', () => {
    const story = probed();
    const [before, after] = story.of('suspects-ranked').slice(-2);
    const share = (ranked: typeof before, id: string): number =>
      ranked?.suspects.find((suspect) => suspect.id === id)?.probability ?? 0;
    expect(share(before, 'FL1 pad 2')).toBeGreaterThan(0.1);
    expect(share(after, 'FL1 pad 2')).toBeLessThan(0.03);
    expect(share(after, 'J1 pin 2')).toBeGreaterThan(share(before, 'J1 pin 2'));
  });

  it('should ask where the place reads nothing, and take the answer', () => {
    const story = withAnOpen()
      .act('probe', { ...farSide, side: 'near' })
      .air(4);
    const asked = story.of('question-asked').at(-1);
    expect(asked).toMatchObject({
      question: 'open',
      pin: '2',
      place: { part: 'FL1', side: 'near' },
    });
    expect(asked === undefined ? null : inWords(asked, story.state, english)).toMatch(
      /^FL1 near side, B: open\?/,
    );
    story.act('open');
    expect(story.of('place-judged')).toMatchObject([
      { side: 'near', overload: true, verdict: 'open' },
    ]);
    expect(story.here()).toBe('3');
    expect(story.of('touch-captured').filter(({ overload }) => overload)).toHaveLength(1);
  });

  it('should take two taps on ground for the answer', () => {
    const story = withAnOpen().act('probe', farSide).air(4);
    story.touch(0.1, 0.5).air(0.5).touch(0.1, 0.5).air(1);
    expect(story.of('place-judged')).toMatchObject([{ side: 'far', verdict: 'open' }]);
  });

  it('should go to the place that was proposed, where none is named', () => {
    const story = withAnOpen();
    const next = story.of('suspects-ranked').at(-1)?.next;
    story.act('probe');
    expect(next).not.toBeNull();
    expect(story.of('probe-begun')).toMatchObject([{ probe: next?.probe, line: next?.line }]);
  });

  it('should be given up by dismissing it, and leave the walk where it was', () => {
    const story = withAnOpen().act('probe', farSide).lift(0.5).act('dismiss');
    expect(story.of('probe-ended')).toMatchObject([{ reason: 'given-up' }]);
    story.lift(0.3).touch(410, 1.2);
    expect(story.of('place-judged')).toEqual([]);
    expect(story.verdicts()['pin 3']).toBe('normal');
  });

  it('should be possible when all pins are walked', () => {
    const story = withAnOpen().lift(0.5).touch(410, 1.2).lift(0.6).touch(0.1, 1.2).lift(0.6);
    story.touch(2400, 1.2);
    expect(story.state.stage).toBe('finished');
    story.act('probe', farSide).lift(0.8).touch(402, 1.5);
    expect(story.of('place-judged')).toHaveLength(1);
    expect(story.state.stage).toBe('finished');
    expect(story.of('walk-finished')).toHaveLength(1);
  });

  it.each<[string, Omit<Act, 'act'>, RegExp]>([
    ['a line', { line: 'X', side: 'chip' }, /no line X/],
    ['a part along the line', { line: 'B', part: 'R9', side: 'far' }, /does not pass through R9/],
  ])('should refuse %s the profile does not have', (_, target, reason) => {
    const story = withAnOpen().act('probe', target);
    expect(story.of('act-refused').at(-1)?.reason).toMatch(reason);
    expect(story.state.probing).toBeNull();
  });

  it('should refuse other steps meanwhile, and a probe where nothing is in question', () => {
    const story = tellStory({ lines }).lift(0.5).touch(1200, 1.2).act('probe');
    expect(story.of('act-refused').at(-1)?.reason).toMatch(/no probe would tell more/);
    const busy = withAnOpen().act('probe', farSide).act('next');
    expect(busy.of('act-refused').at(-1)?.reason).toMatch(/being probed; dismiss ends it/);
  });

  it('should read a pin once more for a proposed retake, and leave the walk where it was', () => {
    const story = tellStory({ lines }).lift(0.5).touch(1200, 1.2).lift(0.6).touch(400, 1.2);
    story.air(4).act('open');
    expect(story.of('suspects-ranked').at(-1)?.next).toMatchObject({ probe: 'retake', pin: '3' });
    story.act('probe').lift(0.7).touch(410, 1.5);
    expect(story.of('probe-begun')).toMatchObject([{ probe: 'retake', line: 'C', pin: '3' }]);
    expect(story.verdicts()['pin 3']).toBe('normal');
    expect(story.here()).toBe('4');
    story.lift(0.6).touch(0.1, 1.2);
    expect(story.verdicts()['pin 4']).toBe('normal');
  });

  it('should take no tap for a place, where the probe is asked for in the middle of an answer', () => {
    const story = tellStory({ lines }).lift(0.5).touch(1200, 1.2).air(4).act('open').air(4);
    story.act('probe', farSide).touch(0.1, 0.6).air(0.5);
    expect(story.of('place-judged')).toEqual([]);
    story.touch(402, 1.5);
    expect(story.of('place-judged')).toMatchObject([{ value: 402 }]);
  });

  it('should be the same in a rerun', () => {
    const story = probed().lift(0.6).touch(410, 1.2).act('quit');
    expect([...rerun(story.opened, story.inputs)].slice(1)).toEqual(story.events);
  });
});
