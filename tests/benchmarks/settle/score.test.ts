// Each kind of error, made by hand, is counted once and as what it is.
import { describe, expect, it } from 'vitest';
import { generateWalk } from './generate-walk.js';
import { mixtures } from './mixtures/all.js';
import { scoreWalk } from './score-walk.js';
import type { ScoredEvent } from './scored-event.js';
import { errorShare, tally } from './tally.js';
import { eventsWith, judged, settled, walkByHand } from './walk-by-hand.js';
import type { GeneratedWalk } from './walk-truth.js';

const score = (changed: Parameters<typeof eventsWith>[0]) =>
  scoreWalk(walkByHand, eventsWith(changed));
const faultsOf = (changed: Parameters<typeof eventsWith>[0]) =>
  score(changed).findings.map(({ fault, index }) => [fault, index]);

describe('scoreWalk', () => {
  it('finds nothing in a faultless walk and times every pin that reads a value', () => {
    const result = score({});
    expect(result.findings).toEqual([]);
    expect(result.departure).toBeNull();
    expect(result.reached).toBe(5);
    expect(result.delays.map((delay) => Number(delay.toFixed(3)))).toEqual([0.5, 0.5, 0.5, 0.5]);
  });

  it('counts a capture over 2 % and 2 counts away as wrong', () => {
    expect(faultsOf({ '2': [settled('2', 6, 408.1), judged('2', 6, 'normal')] })).toEqual([
      ['wrong-capture', 1],
    ]);
    expect(faultsOf({ '2': [settled('2', 6, 407.9), judged('2', 6, 'normal')] })).toEqual([]);
  });

  it('forgives two counts where 2 % is less than a count', () => {
    expect(faultsOf({ '1': [settled('1', 2, 0.5), judged('1', 2, 'normal')] })).toEqual([]);
    expect(faultsOf({ '1': [settled('1', 2, 0.6), judged('1', 2, 'normal')] })).toEqual([
      ['wrong-capture', 0],
    ]);
  });

  it('counts a value on an open pin, and an overload on a pin that reads, as wrong', () => {
    expect(faultsOf({ '4': [settled('4', 17, 90), judged('4', 17, 'open')] })).toEqual([
      ['wrong-capture', 3],
    ]);
    expect(faultsOf({ '2': [settled('2', 6, null), judged('2', 6, 'normal')] })).toEqual([
      ['wrong-capture', 1],
    ]);
  });

  it('lets a later capture of the same pin put an earlier one right', () => {
    const twice = [settled('2', 5.6, 300), settled('2', 6.5, 400), judged('2', 6.5, 'normal')];
    expect(faultsOf({ '2': twice })).toEqual([]);
  });

  it('counts one touch captured for two pins as misnamed and advanced twice, without its echoes', () => {
    const result = score({
      '3': [settled('3', 7.5, 400), judged('3', 7.5, 'normal')],
      '4': [settled('4', 10.2, 402), judged('4', 10.2, 'normal')],
    });
    expect(result.findings.map(({ fault, index, twice }) => [fault, index, twice])).toEqual([
      ['ran-ahead', 2, true],
    ]);
    expect(result.departure?.index).toBe(2);
    expect(result.reached).toBe(3);
  });

  it('tells lines that read alike apart by the touch, not by the value', () => {
    expect(faultsOf({ '3': [settled('3', 7.5, 402), judged('3', 7.5, 'normal')] })).toEqual([
      ['ran-ahead', 2],
    ]);
  });

  it('counts the next pin taken for a repeat as misnamed', () => {
    const held = [settled('2', 6, 400), settled('2', 10.2, 402), judged('2', 10.2, 'normal')];
    expect(faultsOf({ '2': held, '3': [] })).toEqual([['held-back', 1]]);
  });

  it('counts a pin held and not captured as missed when the next pin gets its name', () => {
    const result = score({
      '2': [settled('2', 10.2, 402), judged('2', 10.2, 'normal')],
      '3': [settled('3', 17, null), judged('3', 17, 'open')],
    });
    expect(result.findings.map(({ fault }) => fault)).toEqual(['passed-by']);
    expect(tally([result])).toMatchObject({ missed: 1, misnamed: 0, outOfStep: 1, pins: 2 });
  });

  it('counts a pin without a capture as missed and goes on when the walk stayed in step', () => {
    const result = score({ '3': [] });
    expect(result.findings.map(({ fault, index }) => [fault, index])).toEqual([['missed', 2]]);
    expect(result.departure).toBeNull();
    expect(result.reached).toBe(5);
  });

  it('counts a walk that stood still once', () => {
    const result = score({ '3': [], '4': [], '5': [] });
    expect(result.findings.map(({ fault, index }) => [fault, index])).toEqual([['missed', 2]]);
    expect(result.reached).toBe(3);
  });

  it('counts a capture from a touch in passing as misnamed', () => {
    expect(faultsOf({ '3': [settled('3', 9.1, 402), judged('3', 9.1, 'normal')] })).toEqual([
      ['took-neighbour', 2],
    ]);
  });

  it('goes by the last reading used when the name is given later', () => {
    const late = { ...settled('2', 9.6, 400), to: 7.9 };
    const result = score({ '2': [late, judged('2', 9.6, 'normal')] });
    expect(result.findings).toEqual([]);
    expect(result.delays[1]).toBeCloseTo(4.1, 9);
    expect(result.readDelays[1]).toBeCloseTo(2.4, 9);
  });

  it('counts a wrong verdict, a missing one and an unsure one apart, the last one of a pin only', () => {
    expect(faultsOf({ '2': [settled('2', 6, 400), judged('2', 6, 'low')] })).toEqual([
      ['wrong-verdict', 1],
    ]);
    expect(faultsOf({ '2': [settled('2', 6, 400)] })).toEqual([['wrong-verdict', 1]]);
    expect(faultsOf({ '2': [settled('2', 6, 400), judged('2', 6, 'unsure')] })).toEqual([
      ['unsure', 1],
    ]);
    const mended = [settled('2', 6, 400), judged('2', 6, 'unsure'), judged('2', 7, 'normal')];
    expect(faultsOf({ '2': mended })).toEqual([]);
  });

  it('counts an empty run as one missed pin', () => {
    const result = scoreWalk(walkByHand, []);
    expect(result.findings.map(({ fault }) => fault)).toEqual(['missed']);
    expect(result.reached).toBe(1);
  });
});

/** What a program that knew the truth would say: every hold captured once settled, names and verdicts right. */
const knowing = (walk: GeneratedWalk): ScoredEvent[] =>
  walk.contacts.flatMap(({ index, touch, settledAt, seen, end }) => {
    const truth = walk.pins[index];
    if (touch === 'neighbour' || truth === undefined) return [];
    const t = settledAt === null ? end - 0.1 : settledAt + 2 / walk.meter.rate;
    return [settled(truth.pin, t, seen), judged(truth.pin, t, truth.right[0] ?? 'unread')];
  });

describe.each(mixtures.map((mixture) => [mixture.name, mixture] as const))(
  'scoreWalk on generated walks: %s',
  (_name, mixture) => {
    it('finds nothing in what a program that knew the truth would say', () => {
      for (let number = 0; number < 10; number += 1) {
        const walk = generateWalk(mixture, 11, number);
        const score = scoreWalk(walk, knowing(walk));
        expect(score.findings).toEqual([]);
        expect(score.reached).toBe(walk.pins.length);
      }
    });

    it('finds every walk out of step whose names are one place along', () => {
      for (let number = 0; number < 5; number += 1) {
        const walk = generateWalk(mixture, 11, number);
        const shifted = walk.contacts.map((contact) => ({ ...contact, index: contact.index + 1 }));
        const score = scoreWalk(walk, knowing({ ...walk, contacts: shifted }));
        expect(score.findings.map(({ fault }) => fault)).toEqual(['missed', 'ran-ahead']);
      }
    });
  },
);

describe('tally', () => {
  it('sums walks and takes shares of pins reached', () => {
    const sums = tally([score({}), score({ '2': [settled('2', 6, 300), judged('2', 6, 'low')] })]);
    expect(sums).toMatchObject({ walks: 2, pins: 10, wrong: 1, wrongVerdict: 1, misnamed: 0 });
    expect(errorShare(sums)).toBeCloseTo(0.1, 12);
    expect(sums.medianS).toBeCloseTo(0.5, 9);
  });

  it('has no times where nothing was captured', () => {
    expect(tally([scoreWalk(walkByHand, [])])).toMatchObject({ medianS: null, p95S: null });
  });
});
