import { describe, expect, it } from 'vitest';
import { learnPads } from '../../../src/core/pads/learn-pads.js';
import { padAt } from '../../../src/core/pads/match-pad.js';
import type { Pad } from '../../../src/core/pads/pad.js';
import { touchUncertainty } from '../../../src/core/pads/touch-uncertainty.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { demo } from './demo-profile.js';

const pads: readonly Pad[] = [
  { command: 'open', value: 750, standardUncertainty: 0.8 },
  { command: 'back', value: 1200, standardUncertainty: 1.2 },
];

describe('matching a reading with a pad', () => {
  it.each([
    [750, 'open'],
    [752, 'open'],
    [1196, 'back'],
    [765, null],
    [900, null],
    [0, null],
  ])('should take %s Ω for %s', (value, command) => {
    expect(padAt(pads, value, 0.8)?.command ?? null).toBe(command);
  });

  it('should not choose between two', () => {
    const close: Pad[] = [...pads, { command: 'skip', value: 754, standardUncertainty: 0.8 }];
    expect(padAt(close, 752, 0.8)).toBeNull();
    expect(padAt(close, 748, 0.8)?.command ?? null).toBe('open');
  });
});

describe('the uncertainty of a short touch', () => {
  it('should be the contact on few ohms, and the scatter on many', () => {
    expect(touchUncertainty(1, 0, 'resistance')).toBeCloseTo(0.1, 3);
    expect(touchUncertainty(100_000, 10, 'resistance')).toBeCloseTo(100, 0);
    expect(touchUncertainty(1.2, 0.001, 'diode')).toBeLessThan(0.002);
  });

  it('should refuse what is no reading', () => {
    expect(() => touchUncertainty(Number.NaN, 1, 'resistance')).toThrow(RangeError);
    expect(() => touchUncertainty(1, -1, 'resistance')).toThrow(RangeError);
  });
});

describe('learning the pads', () => {
  const plan = planWalk(demo);
  const touch = (command: Pad['command'], value: number | null) => ({
    command,
    value,
    standardUncertainty: value === null ? 0 : touchUncertainty(value, 1, 'resistance'),
  });

  it('should keep each as the meter reads it', () => {
    const { pads: learned, problems } = learnPads(
      [touch('open', 751.2), touch('back', 1199)],
      plan,
    );
    expect(problems).toEqual([]);
    expect(learned.map(({ command, value }) => [command, value])).toEqual([
      ['open', 751.2],
      ['back', 1199],
    ]);
  });

  it.each<[string, ReturnType<typeof touch>, RegExp]>([
    ['a pad that reads nothing', touch('back', null), /nothing was read/],
    ['a pad like another one', touch('back', 752), /reads like the pad "open"/],
    ['a pad like a line', touch('back', 2070), /reads like the line BUS_DATA/],
    ['a pad like a short', touch('back', 0.4), /reads like a short/],
    ['a command learned before', touch('open', 1500), /learned before/],
  ])('should refuse %s and keep the rest', (_, second, message) => {
    const { pads: learned, problems } = learnPads(
      [touch('open', 750), second, touch('next', 160_000)],
      plan,
    );
    expect(learned.map(({ command }) => command)).toEqual(['open', 'next']);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.what).toMatch(message);
  });
});
