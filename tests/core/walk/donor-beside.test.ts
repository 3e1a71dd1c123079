import { describe, expect, it } from 'vitest';
import { gatherBoard } from '../../../src/core/learn/board.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { rejudge } from '../../../src/core/walk/rejudge.js';
import { rerun } from '../../../src/core/walk/rerun.js';
import { tallyPins } from '../../../src/core/walk/tally.js';
import { ohms, type StoryLines, storyProfile, tellStory } from '../../support/walk-story.js';

const measure = { function: 'resistance', polarity: 'red-walks' } as const;
/** Nobody has measured this connector: nothing is expected but of ground. */
const blank: StoryLines = [
  ['GND', { kind: 'ground' }],
  ['DATA', { kind: 'signal', mate: 'DATA_N' }],
  ['DATA_N', { kind: 'signal', mate: 'DATA' }],
  ['RESET', { kind: 'signal' }],
];

const walk = (lines: StoryLines) => tellStory({ lines, donor: 'beside', noise: 0.0004 });

/** Donor and patient at every pin: held for 1.2 s, with a second or two from board to board. */
const inTurns = (lines: StoryLines, readings: readonly (readonly [number, number])[]) =>
  readings.reduce(
    (story, [donor, patient], at) =>
      story
        .touch(donor, 1.2)
        .lift(at % 2 === 0 ? 1.1 : 1.7)
        .touch(patient, 1.2)
        .lift(at % 2 === 0 ? 2 : 0.9),
    walk(lines),
  );

describe('the plan of a walk with a donor beside', () => {
  it('should take each pin on the donor first, under names that are not the patient’s', () => {
    const { pins } = planWalk(storyProfile(blank, measure), measure, undefined, 'beside');
    expect(pins.map(({ pin }) => pin)).toEqual([
      'donor 1',
      '1',
      'donor 2',
      '2',
      'donor 3',
      '3',
      'donor 4',
      '4',
    ]);
    expect(pins.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(pins[2]).toMatchObject({ line: 'donor DATA', mate: 'donor DATA_N', board: 'donor' });
    expect(pins[3]).toMatchObject({ line: 'DATA', mate: 'DATA_N' });
    expect(pins[3]?.board).toBeUndefined();
  });

  it('should leave a walk of one board as it was', () => {
    const profile = storyProfile(blank, measure);
    expect(planWalk(profile, measure, ['2', '3']).pins.map(({ pin }) => pin)).toEqual(['2', '3']);
  });
});

describe('a walk with a donor beside', () => {
  it('should expect of the patient what the donor has just read', () => {
    const story = inTurns(
      [...blank.slice(0, 2), ['RESET', ohms(4700)]],
      [
        [0.2, 0.2],
        [500, 510],
        [4500, 3000],
      ],
    );
    const judged = story.of('pin-judged').filter(({ board }) => board !== 'donor');
    expect(judged.map(({ pin, verdict }) => [pin, verdict])).toEqual([
      ['1', 'normal'],
      ['2', 'normal'],
      ['3', 'low'],
    ]);
    expect(judged[2]).toMatchObject({ line: 'RESET', agreed: false });
    expect(judged[2]?.because).toContain('donor');
    // 4500 Ω within the usual 10 %, common practice, no source.
    const { low = 0, high = 0 } = Object(judged[2]?.expected) as { low?: number; high?: number };
    expect(low).toBeCloseTo(0.9 * 4500, -2);
    expect(high).toBeCloseTo(1.1 * 4500, -2);
  });

  it('should say of every event of the donor that it is the donor’s', () => {
    const story = inTurns(blank, [
      [0.2, 0.2],
      [500, 510],
    ]);
    const own = story.of('pin-settled').map(({ pin, board }) => [pin, board]);
    expect(own).toEqual([
      ['donor 1', 'donor'],
      ['1', undefined],
      ['donor 2', 'donor'],
      ['2', undefined],
    ]);
    expect(tallyPins(story.state)).toMatchObject({ normal: 2, unread: 2 });
  });

  it('should ask about a donor that reads nothing, and expect the same of the patient', () => {
    const asked = walk(blank).touch(0.2, 1.2).lift(1.4).touch(0.2, 1.2).air(3.2);
    expect(asked.of('question-asked').at(-1)).toMatchObject({ question: 'open', pin: 'donor 2' });
    const both = asked.act('open').air(3.5);
    expect(both.of('question-asked').at(-1)).toMatchObject({ question: 'open', pin: '2' });
    expect(both.act('open').verdicts()).toMatchObject({ 'pin donor 2': 'open', 'pin 2': 'normal' });
  });

  it('should keep to the profile where the donor is not normal itself', () => {
    const lines: StoryLines = [
      ['GND', { kind: 'ground' }],
      ['DATA', ohms(500)],
    ];
    const story = walk(lines)
      .touch(0.2, 1.2)
      .lift(1.4)
      .touch(0.2, 1.2)
      .lift(1.4)
      .touch(200, 1.2)
      .lift(0.9)
      .touch(200, 1.2)
      .lift(1.4)
      .touch(495, 1.2);
    expect(story.verdicts()).toMatchObject({ 'pin donor 2': 'low', 'pin 2': 'normal' });
    const patient = story.of('pin-judged').find(({ pin }) => pin === '2');
    expect(patient?.expected).toMatchObject({ low: 450, high: 550 });
    expect(patient?.because ?? []).not.toContain('donor');
  });

  it('should not take a quick second touch of the donor for the patient', () => {
    const story = inTurns(blank, [[0.2, 0.2]])
      .touch(500, 1.2)
      .lift(0.4)
      .touch(500, 1.2);
    expect(story.verdicts()).not.toHaveProperty('pin 2');
  });

  it('should not press-test the donor', () => {
    const story = inTurns(blank, [[0.2, 0.2]])
      .touch(500, 1.2)
      .lift(1)
      .act('press');
    expect(story.of('act-refused').at(-1)).toMatchObject({
      act: 'press',
      reason: 'the donor was read last; press tests are made on the patient',
    });
  });

  it('should doubt the ground of one board by its own opens', () => {
    const lines: StoryLines = [
      ['GND', { kind: 'ground' }],
      ['A', ohms(500)],
      ['B', ohms(700)],
    ];
    const story = walk(lines)
      .touch(0.2, 1.2)
      .lift(1.4)
      .touch(0.2, 1.2)
      .lift(1.4)
      .touch(500, 1.2)
      .lift(1.4)
      .air(3)
      .act('open')
      .lift(1)
      .touch(700, 1.2)
      .lift(1.4)
      .air(3)
      .act('open');
    expect(story.verdicts()).toMatchObject({
      'pin 2': 'open',
      'pin donor 3': 'normal',
      'pin 3': 'open',
    });
    expect(story.of('ground-doubted')).toHaveLength(1);
  });

  it('should be decided the same again from its inputs', () => {
    const story = inTurns(blank, [
      [0.2, 0.2],
      [500, 510],
      [505, 300],
    ]);
    const again = [...rerun(story.opened, story.inputs)].filter(
      ({ type }) => type !== 'session-opened',
    );
    expect(again).toEqual(story.events.filter(({ type }) => type !== 'session-opened'));
  });

  it('should be judged by another profile beside the donor as well', () => {
    const story = inTurns(blank, [
      [0.2, 0.2],
      [500, 510],
      [505, 512],
    ]);
    const again = (lines: StoryLines) =>
      rejudge(story.state, storyProfile(lines, measure)).map(({ judged }) => [
        judged.pin,
        judged.verdict,
        judged.because ?? [],
      ]);
    expect(again(blank)).toEqual([
      ['1', 'normal', expect.anything()],
      ['2', 'normal', expect.arrayContaining(['donor'])],
      ['3', 'normal', expect.arrayContaining(['donor'])],
    ]);
    // By this profile the donor itself is low: its reading is no measure.
    const known = [blank[0], ['DATA', ohms(900)], ...blank.slice(2)] as StoryLines;
    expect(again(known)[1]?.slice(0, 2)).toEqual(['2', 'low']);
  });

  it('should be learned from by what the donor read', () => {
    const story = inTurns(blank, [
      [0.2, 0.2],
      [500, 300],
    ]);
    const board = gatherBoard('board', [story.opened, ...story.events]);
    expect(board?.pins.map(({ pin, line }) => [pin, line])).toEqual([
      ['1', 'GND'],
      ['2', 'DATA'],
    ]);
    expect(board?.pins[1]?.value).toBeCloseTo(500, -1);
  });
});
