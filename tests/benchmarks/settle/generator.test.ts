// The generated walks are what they claim to be: the same for a seed, valid for the program, and with the
// shares and laws of their mixture.
import { describe, expect, it } from 'vitest';
import { type Input, inputTime } from '../../../src/core/inputs.js';
import { profileFormat } from '../../../src/core/profile/profile-format.js';
import { isOverload, isValue } from '../../../src/core/reading.js';
import { parseLogLine } from '../../../src/core/reading-log.js';
import { settlesIn } from './creeping-line.js';
import { resolutionAt } from './draw-meter.js';
import { generateWalk } from './generate-walk.js';
import { mixtureNamed, mixtures } from './mixtures/all.js';
import { common } from './mixtures/common.js';
import { readingLog } from './reading-log.js';
import type { GeneratedWalk } from './walk-truth.js';

const many = Array.from({ length: 60 }, (_, number) => generateWalk(common, 7, number));
const holds = many.flatMap((walk) =>
  walk.contacts.filter(({ touch, seen }) => touch === 'hold' && seen !== null),
);

/** Readings taken wholly inside a settled, unbroken stretch of a hold, with what they should show. */
const settledReadings = (walk: GeneratedWalk) =>
  walk.contacts.flatMap(({ touch, seen, settledAt, end, slips }) => {
    if (touch !== 'hold' || seen === null || settledAt === null || slips.length > 0) return [];
    const from = settledAt + 1 / walk.meter.rate + 0.03;
    return walk.inputs.flatMap((input) =>
      input.kind === 'reading' &&
      isValue(input.reading) &&
      input.reading.t > from &&
      input.reading.t < end
        ? [{ value: input.reading.value, seen, walk }]
        : [],
    );
  });

describe('generateWalk', () => {
  it('gives the same walk for the same seed and another for another', () => {
    const log = (seed: number, number: number) =>
      readingLog(generateWalk(common, seed, number).inputs);
    expect(log(3, 1)).toBe(log(3, 1));
    expect(log(3, 1)).not.toBe(log(4, 1));
    expect(log(3, 1)).not.toBe(log(3, 2));
  });

  it.each(mixtures.map((mixture) => [mixture.name, mixture] as const))(
    'writes a log and a profile the program reads, in order of time: %s',
    (_name, mixture) => {
      const walk = generateWalk(mixture, 5, 0);
      const lines = readingLog(walk.inputs).trimEnd().split('\n');
      expect(lines.length).toBeGreaterThan(100);
      expect(lines.map((line, index): Input => parseLogLine(line, index + 1))).toEqual(walk.inputs);
      const times = walk.inputs.map(inputTime);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      expect(profileFormat.parse(JSON.parse(JSON.stringify(walk.profile)))).toEqual(walk.profile);
      expect(walk.pins.map(({ pin }) => pin)).toEqual(
        walk.profile.connector.pins.map(({ pin }) => pin),
      );
    },
  );

  it('has grounds at both ends, pairs that read alike, supplies and every condition', () => {
    const kinds = new Set(many.flatMap(({ pins }) => pins.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(['ground', 'signal', 'supply', 'unused']);
    const conditions = new Set(many.flatMap(({ pins }) => pins.map(({ condition }) => condition)));
    expect(conditions.size).toBe(9);
    for (const { pins } of many)
      expect([pins[0]?.kind, pins.at(-1)?.kind]).toEqual(['ground', 'ground']);
  });

  it('slips in 12 % of holds and touches a neighbour first in 6 %', () => {
    const slipped = holds.filter(({ slips }) => slips.length > 0).length / holds.length;
    const all = many.flatMap(({ contacts }) => contacts);
    const landings = all.filter(({ touch }) => touch === 'hold').length;
    const neighbours = all.filter(({ touch }) => touch === 'neighbour').length / landings;
    // About four standard errors of some 2,300 holds.
    expect(Math.abs(slipped - 0.12)).toBeLessThan(0.028);
    expect(Math.abs(neighbours - 0.06)).toBeLessThan(0.02);
    for (const [from, to] of holds.flatMap(({ slips }) => slips)) {
      expect(to - from).toBeGreaterThanOrEqual(0.05);
      expect(to - from).toBeLessThanOrEqual(0.4);
    }
  });

  it('lifts for 0.5 s or more between touches and holds each pin settled for 1.5 s or more', () => {
    for (const { contacts } of many)
      contacts.forEach(({ touch, end }, index) => {
        const next = contacts[index + 1];
        if (touch === 'hold' && next) expect(next.start - end).toBeGreaterThanOrEqual(0.5);
      });
    for (const { settledAt, end, start } of holds) {
      expect(end - (settledAt ?? end)).toBeGreaterThanOrEqual(1.5);
      expect(settledAt).toBeGreaterThanOrEqual(start);
    }
  });

  it('shows the settled value within creep, noise and rounding once settled', () => {
    // Walks with visible ranging may show one wrong reading in a hold.
    const readings = many
      .filter(({ meter }) => meter.ranging === 'unseen')
      .flatMap(settledReadings);
    expect(readings.length).toBeGreaterThan(10_000);
    for (const { value, seen, walk } of readings) {
      const { noise, drift } = walk.meter;
      const room = (0.006 + 5.5 * noise + drift.amplitude) * seen;
      expect(Math.abs(value - seen)).toBeLessThanOrEqual(
        room + 2.5 * resolutionAt(walk.meter, seen),
      );
    }
  });

  it('has the noise it draws', () => {
    const walk = many.find(
      ({ meter }) => meter.noise > 0.002 && meter.rate >= 20 && meter.ranging === 'unseen',
    );
    if (walk === undefined) throw new Error('no noisy walk among those drawn');
    const off = settledReadings(walk)
      .filter(({ seen }) => seen > 100 * resolutionAt(walk.meter, seen))
      .map(({ value, seen }) => value / seen - 1);
    const deviation = Math.sqrt(off.reduce((sum, x) => sum + x * x, 0) / off.length);
    expect(deviation / walk.meter.noise).toBeGreaterThan(0.9);
    expect(deviation / walk.meter.noise).toBeLessThan(1.4);
  });

  it('answers every open pin with a mark while it is held, and reads overload there', () => {
    let opens = 0;
    for (const { pins, contacts, inputs } of many)
      for (const [index, { ends }] of pins.entries()) {
        if (ends !== 'open') continue;
        opens += 1;
        const hold = contacts.find(
          (contact) => contact.index === index && contact.touch === 'hold',
        );
        const during = inputs.filter((input) => {
          const t = inputTime(input);
          return hold !== undefined && t > hold.start + 0.6 && t <= hold.end;
        });
        expect(during.filter((input) => input.kind === 'act')).toMatchObject([
          { act: { act: 'open' } },
        ]);
        expect(during.some((input) => input.kind === 'reading' && !isOverload(input.reading))).toBe(
          false,
        );
        expect(during.length).toBeGreaterThan(5);
      }
    expect(opens).toBeGreaterThan(40);
  });

  it('touches a bad pin twice or says next, and a good one once', () => {
    for (const { pins, contacts } of many)
      pins.forEach(({ ends }, index) => {
        const touches = contacts.filter((c) => c.index === index && c.touch === 'hold').length;
        expect(touches).toBe(ends === 'two-touches' ? 2 : 1);
      });
  });

  it('shows partly broken contact as an odd high value or an overload, never as a low one', () => {
    const clean = many.filter(({ meter }) => meter.ranging === 'unseen');
    let odd = 0;
    for (const { contacts, inputs } of clean)
      for (const { seen, settledAt, slips } of contacts)
        for (const [from, to] of slips) {
          if (seen === null || settledAt === null || from < settledAt || seen < 50) continue;
          // From the end of the slip on, the line may creep anew.
          for (const input of inputs) {
            if (input.kind !== 'reading' || !isValue(input.reading)) continue;
            if (input.reading.t < from || input.reading.t > to) continue;
            expect(input.reading.value).toBeGreaterThan(0.95 * seen);
            if (input.reading.value > 1.1 * seen) odd += 1;
          }
        }
    expect(odd).toBeGreaterThan(10);
  });
});

describe('settlesIn', () => {
  it('solves the exponential: tau · ln(amount / threshold)', () => {
    expect(settlesIn([{ amount: -70, tauS: 0.6 }], 0.5)).toBeCloseTo(0.6 * Math.log(140), 6);
    expect(settlesIn([{ amount: 0.4, tauS: 0.6 }], 0.5)).toBe(0);
  });
});

describe('mixtureNamed', () => {
  it('names the known ones when asked for another', () => {
    expect(mixtureNamed('diode').board.function).toBe('diode');
    expect(() => mixtureNamed('other')).toThrow(/common, slow-hands, hard-bench, diode/u);
  });
});
