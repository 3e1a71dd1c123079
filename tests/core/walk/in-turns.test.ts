// Two boards in turns with nothing expected of the lines: nothing is named by guess, and whoever is called back to a
// known pin goes on from there.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginWalk } from '../../../src/core/walk/decide.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { foldStored, openStored } from '../../../src/core/walk/fold-stored.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { type StoryLines, tellStory, type WalkStory } from '../../support/walk-story.js';

const blank = (count: number): StoryLines => [
  ['GND', { kind: 'ground' }],
  ...Array.from({ length: count }, (_, i) => [`L${i}`, { kind: 'signal' }] as const),
];

/** Touches one after another, each for 1.2 s with 1.5 s from board to board. */
const touches = (values: readonly number[], lines = blank(4)): WalkStory =>
  values.reduce(
    (story, value) => story.touch(value, 1.2).lift(1.5),
    tellStory({ lines, donor: 'beside', noise: 0.0004 }),
  );

const told = (story: WalkStory) => story.of('pin-settled').map(({ pin }) => pin);

describe('a patient far from a donor of which nothing is known', () => {
  it('should not be named at once; both boards are touched again', () => {
    const story = touches([0.2, 0.2, 9000, 1500]);
    expect(told(story)).toEqual(['donor 1', '1', 'donor 2']);
    expect(story.state.question).toMatchObject({ question: 'go-back', pin: 'donor 1' });
  });

  it('should be told as it reads once both boards were touched again, and not asked for a third time', () => {
    const story = touches([0.2, 0.2, 9000, 1500, 0.2, 0.2, 9003, 1501]);
    expect(told(story)).toEqual(expect.arrayContaining(['donor 2', '2']));
    const last = story.of('pin-judged').findLast(({ pin }) => pin === '2');
    expect(last).toMatchObject({ verdict: 'low', agreed: true });
    expect(last?.because).toContain('boards-differ');
    expect(story.here()).toBe('donor 3');
  });

  it('should not be the board after it, where the patient was passed over', () => {
    const story = touches([0.2, 0.2, 9000, 1500, 0.2, 0.2, 9003, 9100, 1502, 1540]);
    expect(story.verdicts()).toMatchObject({ 'pin 2': 'normal', 'pin 3': 'normal' });
    expect(story.state.pins[3]?.value).toBeCloseTo(9100, -2);
    expect(story.of('walk-realigned')).toEqual([]);
  });

  it('should be waited for where the donor may have been touched twice', () => {
    const story = touches([0.2, 0.2, 9000]).touch(9001, 1.2);
    expect(told(story)).not.toContain('2');
    expect(story.state.question).toMatchObject({ question: 'go-back' });
  });

  it('should not be told bad where the donor shows nothing', () => {
    const story = touches([0.2, 0.2])
      .air(2)
      .act('open')
      .lift(1.5)
      .touch(500, 1.2)
      .lift(1.5)
      .touch(500.3, 1.2);
    const last = story.of('pin-judged').findLast(({ pin }) => pin === '2');
    expect(last).toMatchObject({ verdict: 'unsure', agreed: true });
    expect(last?.because).toContain('boards-differ');
  });

  it('should be told low where the profile itself knows that it is', () => {
    const lines: StoryLines = [
      ['GND', { kind: 'ground' }],
      ['A', { kind: 'signal', expect: { resistance: { nominal: 9000, tolerance: 0.1 } } }],
    ];
    const story = touches([0.2, 0.2, 9000, 1500, 1501], lines);
    const last = story.of('pin-judged').findLast(({ pin }) => pin === '2');
    expect(last).toMatchObject({ verdict: 'low' });
    expect(last?.because).not.toContain('boards-differ');
  });
});

describe('a call back to a known pin', () => {
  it('should give way to "same or next?" where going back tells nothing, and never stall', () => {
    // The patient's pin and the donor's next read alike, and the hands are quick.
    const again = [9000, 9001];
    const story = touches([0.2, 0.2, ...again, ...again, ...again, ...again, ...again]);
    const asked = story.of('question-asked').map(({ question }) => question);
    expect(asked.filter((question) => question === 'go-back').length).toBeLessThanOrEqual(4);
    expect(story.act('go-to', { pin: 'donor 3' }).here()).toBe('donor 3');
  });

  it('should be said again on resuming, and the same place be waited for, after every event', () => {
    const story = touches([
      0.2, 0.2, 9000, 1500, 0.2, 0.2, 9003, 1501, 4000, 4100, 700, 710, 300, 301,
    ]);
    let state: WalkState = openStored(story.opened);
    for (const [at, event] of story.events.entries()) {
      state = foldStored(state, event);
      // What one reading decided is written at once.
      if (story.events[at + 1]?.type !== 'reading-taken') continue;
      const resumed = evolve(state, {
        type: 'session-resumed',
        t: state.t + 60,
        program: 'test',
        wallTime: '2026-01-31T10:00:00.000Z',
        zone: 'UTC',
        tornBytes: 0,
      });
      const { events, state: after } = beginWalk(resumed);
      if (state.stage === 'finished') continue;
      const place = events.find(
        (next) => next.type === 'pin-reached' || next.type === 'question-asked',
      );
      const standing = state.question?.question === 'go-back' ? state.question.pin : null;
      if (standing !== null) expect(place).toMatchObject({ pin: standing });
      else if (place?.type === 'pin-reached')
        expect(after.plan.pins[after.cursor]?.pin).toBe(place.pin);
      expect(after.pins).toEqual(state.pins);
      expect(after.alignment).toEqual(state.alignment);
    }
  });
});

type Slip = 'none' | 'passes-patient' | 'touches-donor-twice';

/** Goes where the walk says, but for one slip, and touches what it finds there. */
const walkHearing = (
  donor: readonly number[],
  patient: readonly number[],
  slip: Slip,
  slipsAt: number,
) => {
  const story = tellStory({ lines: blank(donor.length - 1), donor: 'beside', noise: 0.0004 });
  const truth: { readonly from: number; readonly pin: string }[] = [];
  const { pins } = story.state.plan;
  let slipped = slip === 'none';
  for (let left = 12 * pins.length; left > 0 && story.state.stage === 'walking'; left -= 1) {
    const { question, cursor } = story.state;
    const called = question === null ? -1 : pins.findIndex(({ pin }) => pin === question.pin);
    let at = question?.question === 'go-back' ? called : cursor;
    if (!slipped && at === 2 * slipsAt + 1) {
      slipped = true;
      at += slip === 'passes-patient' ? 1 : -1;
    }
    truth.push({ from: story.t, pin: pins[at]?.pin ?? '' });
    const values = at % 2 === 0 ? donor : patient;
    story.touch(values[Math.floor(at / 2)] ?? 0, 1.2).lift(1.5);
  }
  return { story, at: (t: number) => truth.findLast(({ from }) => from <= t)?.pin };
};

describe('whoever hears the walk and slips once', () => {
  const boards = fc.array(fc.constantFrom(0.97, 0.99, 1.012, 1.03, 0.3, 2.5), {
    minLength: 6,
    maxLength: 6,
  });
  const firstOhms = fc.integer({ min: 120, max: 900 });

  it('should find every pin named right, and come to the end', () => {
    fc.assert(
      fc.property(
        firstOhms,
        boards,
        fc.constantFrom<Slip>('none', 'passes-patient', 'touches-donor-twice'),
        fc.integer({ min: 1, max: 5 }),
        (first, factors, slip, slipsAt) => {
          // Neighbours differ: where two lines read alike no reading can show that one was passed over.
          const donor = [0.2, ...factors.map((_, i) => first * 1.9 ** i)];
          const patient = [0.2, ...factors.map((factor, i) => first * 1.9 ** i * factor)];
          const { story, at } = walkHearing(donor, patient, slip, slipsAt);
          expect(story.state.stage).toBe('finished');
          const last = new Map(story.of('pin-settled').map((settled) => [settled.pin, settled]));
          for (const { pin, from } of last.values()) expect(at(from)).toBe(pin);
          expect(last.size).toBe(2 * donor.length);
          expect(story.of('walk-realigned')).toEqual([]);
        },
      ),
      { numRuns: 60, seed: 6 },
    );
  });
});
