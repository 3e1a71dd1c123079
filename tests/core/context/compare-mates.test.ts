import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareMates } from '../../../src/core/context/compare-mates.js';
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import { weighMate } from '../../../src/core/context/weigh-mate.js';
import type { PlannedPin } from '../../../src/core/profile/plan.js';
import { planOf, readsNothing, readsValue, signal, unread } from './demo-board.js';

const plan = planOf({ P: signal('d', 470, 0.1, 'N'), N: signal('d', 470, 0.1, 'P') });
const [p, n] = plan.pins as [PlannedPin, PlannedPin];
const free = planOf({ P: signal('d', null, 0.1, 'N'), N: signal('d', null, 0.1, 'P') });
const [pFree, nFree] = free.pins as [PlannedPin, PlannedPin];

const compared = (a: ReadPin, b: ReadPin) => compareMates([p, a], [n, b]);

describe('compareMates', () => {
  // Common practice, no source: a healthy data line of 470 in the display's unit with 10 %, mates within a few
  // percent of one another.
  it.each([
    [470, 470],
    [470, 462],
    [452, 465],
  ])('should call %f and %f alike', (a, b) => {
    expect(compared(readsValue(a), readsValue(b))).toMatchObject({
      finding: 'alike',
      both: 'value',
    });
  });

  it.each([
    [470, 430],
    [300, 470],
    [470, 1200],
  ])('should call %f and %f different, though one may be within its limits', (a, b) => {
    const found = compared(readsValue(a), readsValue(b));
    expect(found.finding).toBe('differs');
    if (found.finding === 'differs') expect(found.difference).toBeCloseTo(a / b - 1, 12);
  });

  it('should say on what the two agree when neither is healthy', () => {
    expect(compared(readsNothing, readsNothing)).toEqual({
      finding: 'alike',
      both: 'overload',
      difference: 0,
    });
    expect(compared(readsValue(0.3), readsValue(1.9))).toMatchObject({
      finding: 'alike',
      both: 'short',
    });
    expect(compared(readsValue(250), readsValue(252))).toMatchObject({
      finding: 'alike',
      both: 'value',
    });
  });

  it('should call the same line open a difference', () => {
    expect(compared(readsNothing, readsValue(470))).toEqual({
      finding: 'differs',
      difference: null,
    });
    expect(compared(readsValue(470), readsValue(0.4))).toEqual({
      finding: 'differs',
      difference: null,
    });
  });

  it('should allow for what is expected of the two', () => {
    const uneven = planOf({ A: signal('k', 400, 0.1, 'B'), B: signal('k', 440, 0.1, 'A') });
    const [a, b] = uneven.pins as [PlannedPin, PlannedPin];
    expect(compareMates([a, readsValue(400)], [b, readsValue(440)]).finding).toBe('alike');
    expect(compareMates([a, readsValue(400)], [b, readsValue(400)]).finding).toBe('differs');
  });

  it('should compare without expected values too', () => {
    expect(compareMates([pFree, readsValue(812)], [nFree, readsValue(820)]).finding).toBe('alike');
    expect(compareMates([pFree, readsValue(812)], [nFree, readsValue(760)]).finding).toBe(
      'differs',
    );
  });

  it('should not call different what measuring explains', () => {
    expect(compared(readsValue(470, 9), readsValue(490, 9)).finding).toBe('alike');
    expect(compared(readsValue(470, 1), readsValue(490, 1)).finding).toBe('differs');
  });

  it('should refuse what cannot be compared, and say why', () => {
    const because = (a: ReadPin, b: ReadPin): string => {
      const found = compared(a, b);
      return found.finding === 'not-comparable' ? found.because : found.finding;
    };
    expect(because(readsValue(470), unread)).toBe('not-read');
    expect(because(unread, readsNothing)).toBe('not-read');
    expect(because({ ...readsValue(470), verdict: 'wobble' }, readsValue(470))).toBe('wobbles');
    expect(because(readsValue(470, 20), readsValue(470, 20))).toBe('too-uncertain');
    expect(because({ ...readsValue(470), range: 600 }, { ...readsValue(470), range: 6000 })).toBe(
      'different-ranges',
    );
    expect(because({ ...readsValue(470), range: 600 }, readsValue(470))).toBe('alike');
  });

  it('should find the same either way round', () => {
    const reading = fc
      .double({ min: 0.01, max: 1e6, noNaN: true })
      .map((value) => readsValue(value));
    fc.assert(
      fc.property(reading, reading, (a, b) => {
        expect(compareMates([p, a], [n, b]).finding).toBe(compareMates([n, b], [p, a]).finding);
      }),
      { seed: 411, numRuns: 200 },
    );
  });
});

describe('weighMate', () => {
  const alike = { finding: 'alike', both: 'value', difference: 0 } as const;
  const differs = { finding: 'differs', difference: 0.1 } as const;

  it("should be Bayes' theorem", () => {
    // By hand, with a mate as good as certain: 0.9 · 0.97 / (0.9 · 0.97 + 0.1 · 0.1).
    expect(weighMate(0.9, 1 - 1e-12, alike)).toBeCloseTo(0.873 / 0.883, 9);
    expect(weighMate(0.9, 1 - 1e-12, differs)).toBeCloseTo(0.027 / 0.117, 9);
  });

  it('should say nothing by a mate of which nothing is known, or that cannot be compared', () => {
    expect(weighMate(0.8, 0.99, { finding: 'not-comparable', because: 'not-read' })).toBe(0.8);
    expect(weighMate(0.8, 1e-12, alike)).toBeCloseTo(0.8, 9);
  });

  it('should stay a probability and move the way the finding points', () => {
    const probability = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
    fc.assert(
      fc.property(probability, probability, (normal, mate) => {
        const raised = weighMate(normal, mate, alike);
        const lowered = weighMate(normal, mate, differs);
        return raised >= normal - 1e-12 && raised <= 1 && lowered <= normal + 1e-12 && lowered >= 0;
      }),
      { seed: 412, numRuns: 200 },
    );
  });

  it('should refuse what is no probability', () => {
    expect(() => weighMate(1, 0.5, alike)).toThrow('between 0 and 1');
    expect(() => weighMate(0.5, 0, alike)).toThrow('between 0 and 1');
  });
});
