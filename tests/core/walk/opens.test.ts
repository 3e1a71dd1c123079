// An open line is invisible: the walk asks and never steps by itself; only a positive answer counts.
import { describe, expect, it } from 'vitest';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const lines = [
  ['GND', { kind: 'ground' }],
  ['D0_P', ohms(388)],
  ['CLK', ohms(742)],
  ['NC', { kind: 'unused' }],
  ['RST', ohms(5120)],
] as const;

const atSecond = (rate = 10): WalkStory =>
  tellStory({ lines, rate }).air(0.8).touch(0.2, 1.5).lift(0.5);
const tap = (story: WalkStory): WalkStory => story.touch(0.2, 0.3).air(0.5);

describe('a dwell of overload', () => {
  it('asks once, and never advances however long it lasts', () => {
    for (const rate of [20, 3]) {
      const story = atSecond(rate).air(120);
      expect(story.of('question-asked')).toMatchObject([{ question: 'open', pin: '2' }]);
      expect(story.here()).toBe('2');
      expect(story.of('pin-settled').map(({ pin }) => pin)).toEqual(['1']);
    }
  });

  it('is answered by a touch of the line, which is then captured', () => {
    const story = atSecond().air(10).touch(388.4, 1.5);
    expect(story.of('question-answered')).toMatchObject([{ pin: '2', by: 'contact' }]);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'normal' });
  });

  it('is not asked again at that pin once dismissed', () => {
    const story = atSecond().air(5).act('dismiss').air(30);
    expect(story.of('question-asked')).toHaveLength(1);
    expect(story.here()).toBe('2');
  });
});

describe('the answer', () => {
  it('"open" judges the pin open and steps', () => {
    const story = atSecond().air(5).act('open');
    expect(story.of('question-answered')).toMatchObject([
      { question: 'open', pin: '2', by: 'act' },
    ]);
    expect(story.of('pin-settled').at(-1)).toMatchObject({ pin: '2', overload: true, readings: 0 });
    expect(story.of('pin-judged').at(-1)).toMatchObject({
      pin: '2',
      verdict: 'open',
      agreed: true,
    });
    expect(story.here()).toBe('3');
  });

  it('"open" counts without a question too', () => {
    const story = atSecond().act('open');
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'open' });
  });

  it('two taps on ground answer, at 20 and at 10 readings/s', () => {
    for (const rate of [20, 10]) {
      const story = tap(tap(atSecond(rate).air(5))).air(1);
      expect(story.of('question-answered')).toMatchObject([{ pin: '2', by: 'ground-taps' }]);
      expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'open' });
      expect(story.here()).toBe('3');
    }
  });

  it.each([2.5, 3, 4])(
    'taps held until a slow display has shown the ground answer too, at %d readings/s',
    (rate) => {
      for (const tapS of [0.9, 1.2, 1.5]) {
        const story = atSecond(rate).air(5).touch(0.2, tapS).air(0.9).touch(0.2, tapS).air(1.5);
        expect(story.of('question-answered')).toMatchObject([{ pin: '2', by: 'ground-taps' }]);
        expect(story.of('touch-captured').map(({ value }) => value)).toEqual([0.2, undefined]);
      }
    },
  );

  it('one tap does not', () => {
    const story = tap(atSecond(20).air(5)).air(20);
    expect(story.of('question-answered')).toEqual([]);
    expect(story.here()).toBe('2');
  });

  it('two taps far apart do not, nor two taps before the question', () => {
    const apart = tap(tap(atSecond(20).air(5)).air(6)).air(5);
    expect(apart.of('question-answered')).toEqual([]);
    expect(apart.here()).toBe('2');
    const early = tap(tap(atSecond(20))).air(1);
    expect(early.of('question-answered').map(({ by }) => by)).not.toContain('ground-taps');
    expect(early.verdicts()).not.toHaveProperty('pin 2', 'open');
  });

  it('hunting over other values is no answer', () => {
    const story = atSecond(20).air(5).touch(741, 0.1).air(0.4).touch(5127, 0.1).air(5);
    expect(story.of('question-answered')).toEqual([]);
    expect(story.here()).toBe('2');
  });

  it('a long touch of ground while the question stands is a capture: the line is shorted', () => {
    const story = atSecond(20).touch(388.4, 1.5).air(6).touch(0.2, 2.5);
    expect(story.of('question-asked').at(0)).toMatchObject({ question: 'open', pin: '3' });
    expect(story.of('question-answered').at(0)).toMatchObject({ pin: '3', by: 'contact' });
    expect(story.of('pin-judged').at(-1)).toMatchObject({ pin: '3', verdict: 'short' });
  });

  it('where that ground may be the pin before, touched again, the walk asks and names nothing', () => {
    const story = atSecond(20).air(5).touch(0.2, 2.5);
    expect(story.of('touch-captured')).toHaveLength(2);
    expect(story.of('question-asked').at(-1)).toMatchObject({ question: 'same-or-next' });
    expect(story.of('pin-judged').map(({ pin }) => pin)).toEqual(['1']);
  });

  it('after the taps the next touch is the next pin', () => {
    const story = tap(tap(atSecond(20).air(5)))
      .air(1)
      .touch(741, 1.5);
    expect(story.verdicts()).toEqual({ 'pin 1': 'normal', 'pin 2': 'open', 'pin 3': 'normal' });
  });
});

describe('opens in a row', () => {
  it('two of them doubt the ground, and a reading between starts the count anew', () => {
    const twice = atSecond().air(3).act('open').air(3).act('open');
    expect(twice.of('ground-doubted')).toMatchObject([{ opens: 2 }]);
    const between = tellStory({ lines })
      .act('open')
      .air(0.8)
      .touch(388.4, 1.5)
      .lift(0.9)
      .act('open');
    expect(between.verdicts()).toEqual({ 'pin 1': 'open', 'pin 2': 'normal', 'pin 3': 'open' });
    expect(between.of('ground-doubted')).toEqual([]);
  });

  it('an expected overload is asked for, and answered it is normal', () => {
    const story = atSecond().touch(388.4, 1.5).lift(0.9).touch(741, 1.5).air(6);
    expect(story.of('question-asked').at(-1)).toMatchObject({ question: 'open', pin: '4' });
    expect(story.here()).toBe('4');
    story.act('open');
    expect(story.of('pin-judged').at(-1)).toMatchObject({
      pin: '4',
      verdict: 'normal',
      expected: 'overload',
    });
    expect(story.here()).toBe('5');
  });
});
