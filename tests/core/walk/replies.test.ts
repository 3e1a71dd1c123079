// Reply pads in the walk: a double touch is a command, is echoed, can be taken back, and is never read as a pin.
import { describe, expect, it } from 'vitest';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { rerunSession } from '../../../src/core/walk/rerun.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
  ['INT', ohms(2070)],
  ['RST', ohms(5120)],
] as const;

const values = {
  open: 1200,
  back: 3300,
  next: 8200,
  skip: 15_000,
  'press-test': 27_000,
  note: 47_000,
  'repeat-cue': 82_000,
} as const;
type Command = keyof typeof values;
const pads = Object.entries(values).map(([command, value]) => ({
  command: command as Command,
  value,
  standardUncertainty: value / 1000,
}));

const begin = (rate = 10, more: Partial<Parameters<typeof tellStory>[0]> = {}): WalkStory =>
  tellStory({ lines, rate, pads, ...more })
    .air(0.8)
    .touch(0.2, 1.5)
    .lift(0.9);
const twice = (story: WalkStory, command: Command, s = 0.5): WalkStory =>
  story.touch(values[command], s).air(0.5).touch(values[command], s).air(1);
const replies = (story: WalkStory): string[] =>
  story.events.flatMap((event) =>
    event.type.startsWith('reply-') && 'reply' in event ? [`${event.type} ${event.reply}`] : [],
  );
const settled = (story: WalkStory): (readonly [string, number | undefined])[] =>
  story.of('pin-settled').map(({ pin, value }) => [pin, value]);

describe('a double touch on a pad', () => {
  it.each([20, 10, 5])('answers "open" when the next pin is read, at %s readings/s', (rate) => {
    const asked = twice(begin(rate).air(3), 'open');
    expect(replies(asked)).toEqual(['reply-asked open']);
    expect(asked.here()).toBe('2');
    const story = asked.touch(742, 1.5);
    expect(replies(story)).toEqual(['reply-asked open', 'reply-given open']);
    expect(story.of('act-taken')).toMatchObject([{ act: 'open', pin: '2', by: 'pad' }]);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'open', 'pin 3': 'normal' });
    expect(story.here()).toBe('4');
  });

  it('counts after twelve seconds in the air, and not before', () => {
    const story = twice(begin().air(3), 'open');
    expect(replies(story.air(10))).toEqual(['reply-asked open']);
    expect(replies(story.air(3))).toEqual(['reply-asked open', 'reply-given open']);
    expect(story.here()).toBe('3');
  });

  it('is taken back by a third touch, and by "dismiss"', () => {
    const third = twice(begin().air(3), 'open').touch(values.open, 0.4).air(20);
    expect(replies(third)).toEqual(['reply-asked open', 'reply-cancelled open']);
    expect(third.verdicts()).toEqual({ 'pin 1': 'normal' });
    const dismissed = twice(begin().air(3), 'open').act('dismiss').air(20);
    expect(replies(dismissed)).toEqual(['reply-asked open', 'reply-cancelled open']);
  });

  it('accepts what was read with "next" and leaves a pin unread with "skip"', () => {
    const next = twice(begin().touch(500, 1.5).lift(0.9), 'next').touch(742, 1.5);
    expect(next.of('pin-judged').filter(({ pin }) => pin === '2')).toMatchObject([
      { verdict: 'high', agreed: false },
      { verdict: 'high', agreed: true },
    ]);
    expect(next.verdicts()).toMatchObject({ 'pin 3': 'normal' });
    const skip = twice(begin(), 'skip').touch(742, 1.5);
    expect(skip.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'unread', 'pin 3': 'normal' });
  });

  it('goes back to the pin before, which is then read anew', () => {
    const story = twice(begin().touch(388, 1.5).lift(0.9), 'back').touch(391, 1.5);
    expect(settled(story).map(([pin]) => pin)).toEqual(['1', '2', '2']);
    expect(story.here()).toBe('3');
  });

  it('begins a press test on the pin that was read last', () => {
    const story = twice(begin().touch(500, 1.5).lift(0.9), 'press-test').air(4);
    expect(story.of('press-begun')).toMatchObject([{ pin: '2' }]);
  });

  it('begins the press test of a line that was answered open, and reads nothing meanwhile', () => {
    const story = twice(begin(10, { pressTests: 'each' }).air(3), 'open').touch(742, 3);
    expect(story.of('press-begun')).toMatchObject([{ pin: '2' }]);
    expect(settled(story).map(([pin]) => pin)).toEqual(['1', '2']);
  });

  it('marks the moment with "note" and moves nothing with "say again"', () => {
    const story = twice(twice(begin(), 'note').air(4), 'repeat-cue').air(4);
    expect(story.of('act-taken')).toMatchObject([{ act: 'note', pin: '2', by: 'pad' }]);
    expect(replies(story).at(-1)).toBe('reply-given repeat-cue');
    expect(story.here()).toBe('2');
  });

  it('is refused in words where it makes no sense', () => {
    const story = twice(begin(), 'next').touch(388, 1.5);
    expect(story.of('act-refused')).toMatchObject([{ act: 'next' }]);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'normal' });
  });
});

describe('a touch of a pad', () => {
  it('is never read as a pin, one, long or many', () => {
    for (const [n, s] of [
      [1, 0.5],
      [1, 2],
      [3, 0.5],
      [5, 0.9],
    ] as const) {
      let story = begin();
      for (let i = 0; i < n; i += 1) story = story.touch(values.back, s).air(0.9);
      story = story.air(3).touch(388, 1.5).lift(0.9).touch(742, 1.5);
      expect(settled(story).map(([pin]) => pin)).toEqual(['1', '2', '3']);
    }
  });

  it('moves nothing between two touches of one pin, nor on the way to the next', () => {
    const again = twice(begin().touch(500, 1.5).lift(0.9), 'note').air(1).touch(501, 1.5);
    expect(again.of('pin-judged').at(-1)).toMatchObject({ pin: '2', agreed: true });
    expect(again.here()).toBe('3');
    const alike = tellStory({
      lines: [...lines.slice(0, 2), ['D0_N', ohms(389)], ['D1_P', ohms(388)]],
      rate: 10,
      pads,
    });
    const story = twice(
      alike.air(0.8).touch(0.2, 1.5).lift(0.9).touch(388, 1.5).lift(0.9),
      'note',
    ).touch(389, 1.5);
    expect(settled(story).map(([pin]) => pin)).toEqual(['1', '2', '3']);
  });

  it('is heard while the grounds are checked and when all is walked', () => {
    const story = twice(
      tellStory({ lines, rate: 10, pads, groundCheck: true }).air(1),
      'skip',
      0.4,
    );
    expect(story.air(13).of('ground-checked')).toMatchObject([{ outcome: 'skipped' }]);
    expect(story.of('ground-missed')).toEqual([]);
    let done = begin();
    for (const value of [388, 742, 2070, 5120]) done = done.touch(value, 1.5).lift(0.9);
    expect(done.of('walk-finished')).toHaveLength(1);
    expect(twice(done, 'back').air(13).here()).toBe('5');
  });
});

describe('a line that reads like a pad', () => {
  it('is read when it is held, and the pad is listened to no more', () => {
    const story = begin().touch(1201, 3.5).lift(0.9).touch(1201, 3.5);
    expect(replies(story)).toEqual(['reply-shadowed open']);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'high' });
    const before = settled(story);
    expect(replies(twice(story.lift(0.9), 'open').air(20))).toEqual(['reply-shadowed open']);
    expect(settled(story)).toEqual(before);
  });

  it('takes back what was heard when it was touched twice in passing', () => {
    const story = twice(begin(), 'open').touch(1201, 3.5);
    expect(replies(story)).toEqual([
      'reply-asked open',
      'reply-cancelled open',
      'reply-shadowed open',
    ]);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'high' });
  });
});

describe('what was heard', () => {
  const story = (): WalkStory =>
    twice(twice(begin().touch(500, 1.5).lift(0.9), 'next').touch(742, 1.5).lift(3), 'open')
      .touch(5120, 1.5)
      .act('note', { text: 'by key' });

  it('comes out the same from the stored inputs', () => {
    const { opened, events } = story();
    expect(events.filter(({ type }) => type === 'act-taken')).toHaveLength(3);
    expect([...rerunSession(opened, events)].slice(1)).toEqual(events);
  });

  it('comes out the same when the events are folded', () => {
    const { opened, events, state } = story();
    expect(events.reduce<WalkState>(evolve, openWalk(opened))).toEqual(state);
  });

  it('is nothing in a session without pads', () => {
    const { pads: _, ...opened } = story().opened;
    expect(openWalk(opened).pads).toBeNull();
  });
});
