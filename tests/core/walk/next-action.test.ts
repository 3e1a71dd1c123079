// What helps most where a verdict is unsure, each action for a reason of its own.
import { describe, expect, it } from 'vitest';
import type { MateComparison } from '../../../src/core/context/compare-mates.js';
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import type { PlannedPin } from '../../../src/core/profile/plan.js';
import type { AccuracyStatement } from '../../../src/core/session-events.js';
import { judge } from '../../../src/core/walk/judge.js';
import { nextAction } from '../../../src/core/walk/next-action.js';
import { seenIn } from '../../../src/core/walk/seen.js';

/** Two ranges, 0.5 % + 3 counts each. */
const accuracy: AccuracyStatement = {
  from: 'driver',
  fullScaleCounts: 6000,
  rows: [600, 6000].map((fullScale) => ({
    fullScale,
    resolution: fullScale / 6000,
    percent: 0.5,
    counts: 3,
  })),
};
const pin: PlannedPin = {
  index: 0,
  pin: '1',
  line: 'LINE',
  kind: 'signal',
  group: undefined,
  mate: undefined,
  row: undefined,
  expected: { nominal: 500, low: 450, high: 550 },
  shortLimit: 5,
  openLimit: null,
  charges: false,
};
const readAt = (value: number, range: number, touch = 0): ReadPin => {
  const seen = { value, range, resolution: range / 6000, standardUncertainty: 0 };
  const { halfWidth = 0 } = seenIn(seen, accuracy);
  const standardUncertainty = Math.hypot(halfWidth / Math.sqrt(3), touch);
  return { ...seenIn({ ...seen, standardUncertainty }, accuracy), verdict: 'unsure' };
};

const advised = (
  read: ReadPin,
  more: Partial<PlannedPin> = {},
  mate: MateComparison | null = null,
) => {
  const planned = { ...pin, ...more };
  const { value, standardUncertainty, halfWidth } = read;
  const judged = judge(planned, {
    value: value ?? 0,
    standardUncertainty: standardUncertainty ?? 0,
    ...(halfWidth === undefined ? {} : { halfWidth }),
  });
  return {
    verdict: judged.verdict,
    advice: nextAction(judged, { pin: planned, read, mate }, accuracy, 'resistance'),
  };
};

describe('nextAction', () => {
  it('says nothing where the verdict is sure', () => {
    expect(advised(readAt(500, 600))).toEqual({ verdict: 'normal', advice: undefined });
  });

  it('asks to hold longer where the touch itself is what leaves it open', () => {
    expect(advised(readAt(545, 600, 8))).toEqual({ verdict: 'unsure', advice: 'hold-longer' });
  });

  it('asks for a finer range where the display is what leaves it open', () => {
    expect(advised(readAt(546, 6000))).toEqual({ verdict: 'unsure', advice: 'change-range' });
  });

  it('asks for the mate while it is not read, and for the function that the profile also knows', () => {
    const nearLimit = readAt(549.5, 600);
    const unread = { finding: 'not-comparable', because: 'not-read' } as const;
    const alike = { finding: 'alike', both: 'value', difference: 0 } as const;
    expect(advised(nearLimit, {}, unread).advice).toBe('compare-mate');
    expect(advised(nearLimit, { elsewhere: 'diode' }, alike).advice).toBe('change-function');
    expect(advised(nearLimit, {}, alike).advice).toBe('retake');
    expect(advised(nearLimit).advice).toBe('retake');
  });

  it('asks for one range for both lines of a pair', () => {
    const apart = { finding: 'not-comparable', because: 'different-ranges' } as const;
    expect(advised(readAt(549.5, 600), {}, apart).advice).toBe('change-range');
  });

  it('asks to hold what wobbles', () => {
    const judged = { verdict: 'wobble', confidence: 1, expected: pin.expected } as const;
    const unsure = { pin, read: readAt(500, 600), mate: null };
    expect(nextAction(judged, unsure, accuracy, 'resistance')).toBe('hold-longer');
  });
});
