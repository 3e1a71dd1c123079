import { describe, expect, it } from 'vitest';
import { lowerLimitAt, upperLimitAt } from '../../../src/core/select/scale.js';
import {
  addMark,
  addReading,
  emptyTrace,
  type Trace,
  traceWindowS,
} from '../../../src/core/select/trace.js';
import { steppedBench } from '../../ui/support/bench-session.js';

const traced = (seconds: number): Trace => {
  const { session, clock } = steppedBench({ scenario: 'healthy' });
  let trace = emptyTrace;
  session.follow((event) => {
    if (event.type === 'reading-taken') trace = addReading(trace, session.state);
    if (event.type === 'pin-judged') {
      trace = addMark(trace, { t: event.t, pin: event.pin, verdict: event.verdict });
    }
  });
  clock.run(seconds);
  return trace;
};

describe('trace', () => {
  it('should keep no more than its window, in order of time', () => {
    const { points, marks } = traced(40);
    const times = points.map(({ t }) => t);
    expect(times.length).toBeGreaterThan(100);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(traceWindowS + 1e-9);
    expect(marks.length).toBeGreaterThan(0);
    expect(marks.every(({ t }) => t >= Math.max(...times) - traceWindowS)).toBe(true);
  });

  it('should place readings that rest on good lines between the limits', () => {
    const still = traced(40).points.filter((point) => point.still);
    expect(still.length).toBeGreaterThan(20);
    for (const { at } of still) {
      expect(at).toBeGreaterThanOrEqual(lowerLimitAt);
      expect(at).toBeLessThanOrEqual(upperLimitAt);
    }
  });

  it('should keep a ground in its place from the ground check into the walk', () => {
    const grounds = traced(8).points.filter((point) => point.still);
    expect(grounds.length).toBeGreaterThan(10);
    const places = new Set(grounds.map(({ at }) => at?.toFixed(1)));
    expect([...places]).toEqual([lowerLimitAt.toFixed(1)]);
  });

  it('should leave out what is neither value nor overload, and nothing twice', () => {
    const { session, clock } = steppedBench();
    clock.run(1);
    const once = addReading(emptyTrace, session.state);
    expect(once.points).toHaveLength(1);
    expect(addReading(once, session.state)).toBe(once);
    const faulty = { ...session.state, reading: { t: 2, fault: '??' } };
    expect(addReading(once, faulty).points).toHaveLength(1);
  });
});
