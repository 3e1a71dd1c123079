// What the technician's acts do to the walk's place, and which are refused with words.
import { describe, expect, it } from 'vitest';
import type { ActName } from '../../../src/core/inputs.js';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
  ['RST', ohms(5120)],
] as const;

const begun = (): WalkStory => tellStory({ lines });
const twoRead = (): WalkStory =>
  begun().air(0.8).touch(0.2, 1.5).lift(0.9).touch(388.4, 1.5).lift(0.5);

const refused = (story: WalkStory, act: ActName, pin?: string): string | undefined => {
  const before = { ...story.state, t: story.t };
  story.act(act, pin === undefined ? {} : { pin });
  expect({ ...story.state }).toEqual(before);
  const last = story.events.at(-1);
  return last?.type === 'act-refused' && last.act === act ? last.reason : undefined;
};

describe('an act that cannot be carried out', () => {
  it('"next" before anything is read is refused, naming the pin', () => {
    expect(refused(begun().air(1), 'next')).toMatch(/nothing is read at pin 1/);
    expect(refused(twoRead(), 'next')).toMatch(/nothing is read at pin 3/);
  });

  it.each([
    ['back', undefined, /first pin/],
    ['go-to', '99', /no pin 99/],
    ['go-to', undefined, /no pin/],
    ['resume', undefined, /not paused/],
    ['dismiss', undefined, /nothing to dismiss/],
    ['press', undefined, /no pin has been read/],
  ] as const)('"%s %s" changes nothing and says why', (act, pin, words) => {
    expect(refused(begun().air(1), act, pin)).toMatch(words);
  });

  it('"pause" twice is refused, and so is anything but "go-to" and "back" after the last pin', () => {
    expect(refused(begun().act('pause'), 'pause')).toMatch(/paused already/);
    const done = begun();
    for (let i = 0; i < lines.length; i += 1) done.act('skip');
    for (const act of ['open', 'next', 'skip'] as const) {
      expect(refused(done, act)).toMatch(/every pin has been walked/);
    }
  });

  it('"open" while a reading shows at the pin is refused', () => {
    expect(
      refused(
        begun()
          .air(1)
          .touch(0.2, 1.5)
          .lift(0.9)
          .touch(388.4, 0.5, {
            creep: { share: -0.9, tauS: 5 },
          }),
        'open',
      ),
    ).toMatch(/pin 2 shows a reading|still rests/);
    expect(refused(begun().air(1).touch(0.2, 1.5), 'open')).toMatch(/still rests/);
  });
});

describe('acts that move', () => {
  it('"skip" leaves the pin unread and goes to the next', () => {
    const story = twoRead().act('skip');
    expect(story.of('pin-judged').at(-1)).toMatchObject({
      pin: '3',
      verdict: 'unread',
      agreed: true,
    });
    expect(story.of('pin-reached').at(-1)).toMatchObject({ pin: '4' });
    story.touch(5127, 1.5);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '4', value: 5127 });
  });

  it('"skip" while touching: the touch under way belongs to what was skipped', () => {
    const story = twoRead().touch(741, 0.15).act('skip').touch(741, 1.5);
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1', '2']);
    expect(story.here()).toBe('4');
  });

  it('"back" goes to the pin before, whose new reading then counts', () => {
    const story = twoRead().act('back');
    expect(story.of('pin-reached').at(-1)).toMatchObject({ pin: '2' });
    story.air(0.5).touch(402.1, 1.5);
    expect(story.of('pin-settled').map(({ pin, value }) => [pin, value])).toEqual([
      ['1', 0.2],
      ['2', 388.4],
      ['2', 402.1],
    ]);
    expect(story.state.pins[1]).toMatchObject({ value: 402.1, verdict: 'normal' });
    expect(story.here()).toBe('3');
  });

  it('"go-to" goes to the named pin, and the walk continues from there', () => {
    const story = twoRead().act('go-to', { pin: '4' });
    expect(story.of('pin-reached').at(-1)).toMatchObject({ pin: '4', line: 'RST' });
    story.touch(5127, 1.5);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'normal', 'pin 4': 'normal' });
    expect(story.state.pins[2]?.verdict).toBe('unread');
  });

  it('"retake" counts nothing that was shown before it, at 2.5 readings/s', () => {
    const story = tellStory({ lines, rate: 2.5 }).air(0.8).touch(0.2, 2).lift(0.9).touch(250, 2);
    story.act('retake').touch(388.4, 1.7);
    const { value, from, t } = story.of('touch-captured').at(-1) ?? {};
    expect(value).toBeCloseTo(388.4, 1);
    expect(from).toBeGreaterThanOrEqual(story.of('act-taken').at(-1)?.t ?? 0);
    expect(t).toBeLessThan(story.t);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'normal' });
  });

  it('"retake" reads the last pin once more, without a lift', () => {
    const story = begun().air(0.8).touch(0.2, 1.5).lift(0.9).touch(388.4, 1.5).act('retake');
    expect(story.here()).toBe('2');
    story.touch(395.1, 2);
    const settled = story.of('pin-settled').at(-1);
    expect(settled?.pin).toBe('2');
    expect(Math.abs((settled?.value ?? 0) / 395.1 - 1)).toBeLessThan(0.001);
    expect(story.here()).toBe('3');
  });

  it('a finished walk can be reopened with "go-to"', () => {
    const story = twoRead().touch(741, 1.5).lift(0.9).touch(5127, 1.5).lift(0.9);
    expect(story.state.stage).toBe('finished');
    story.act('go-to', { pin: '2' });
    expect(story.state.stage).toBe('walking');
    expect(story.here()).toBe('2');
    story.air(0.5).touch(250.3, 1.5);
    expect(story.state.pins[1]).toMatchObject({ verdict: 'low', value: 250.3 });
  });

  it('"pause" stops the judging, "resume" continues at the same pin', () => {
    const story = begun().air(0.8).touch(0.2, 1.5).act('pause').lift(0.9).touch(388.4, 3).lift(0.9);
    expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1']);
    story.act('resume');
    expect(story.of('walk-continued')).toMatchObject([{ pin: '2' }]);
    story.air(0.5).touch(388.4, 1.5);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2' });
  });

  it('"note" keeps its text and changes nothing else', () => {
    const story = twoRead();
    const before = story.state;
    story.act('note', { text: 'flux at FL2' });
    expect(story.events.at(-1)).toMatchObject({
      type: 'act-taken',
      act: 'note',
      text: 'flux at FL2',
    });
    expect({ ...story.state, t: 0 }).toEqual({ ...before, t: 0 });
  });

  it('"press" tests the pin read last, "dismiss" gives it up, and the walk goes on where it was', () => {
    const story = twoRead().act('press').act('dismiss');
    expect(story.of('press-begun')).toMatchObject([{ pin: '2', line: 'D0_P' }]);
    expect(story.of('press-ended')).toMatchObject([{ pin: '2', reason: 'given-up' }]);
    expect(story.here()).toBe('3');
  });

  it('"quit" closes the session: readings after it decide nothing', () => {
    const story = twoRead().act('quit');
    expect(story.of('session-closed')).toMatchObject([{ reason: 'left' }]);
    story.touch(741, 2);
    expect(story.of('pin-settled')).toHaveLength(2);
  });
});
