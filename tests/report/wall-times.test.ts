import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../src/core/events.js';
import { makeReport } from './make-report.js';
import { eventful, opened } from './session-events.js';

const times = (header: Partial<EventOf<'session-opened'>>, more: readonly WalkEvent[] = []) =>
  makeReport([{ ...opened, ...header }, ...more]).times;

describe('wallTimes', () => {
  it('should count from the opening before, in its zone', () => {
    const { times: told } = makeReport(eventful);
    expect(told.momentOf(10)).toBe('09:15:40');
    expect(told.momentOf(640)).toBe('09:26:10');
    expect(told.hourOf(0)).toBe('09:15');
    expect(told.zone).toBe('UTC');
  });

  it('should write the date too where a session ran over several days', () => {
    const next: WalkEvent = { type: 'act-taken', t: 86_400, act: 'quit' };
    expect(times({}, [next]).momentOf(86_400)).toBe('2026-02-01 09:15:30');
    expect(times({}, [next]).momentOf(0)).toBe('2026-01-31 09:15:30');
  });

  it('should use the zone of the place, summer time included', () => {
    const berlin = times({ zone: 'Europe/Berlin', wallTime: '2026-07-01T22:30:00.000Z' });
    expect(berlin.dayOf(0)).toMatchObject({ year: 2026, month: 7, day: 2 });
    expect(berlin.hourOf(0)).toBe('00:30');
  });

  it('should fall back to seconds where no time is known or the one told is impossible', () => {
    for (const wallTime of [null, 'yesterday', '']) {
      const told = times({ wallTime });
      expect([told.momentOf(12.34), told.dayOf(1), told.hourOf(1), told.zone]).toEqual([
        '12.3 s',
        null,
        null,
        null,
      ]);
    }
  });

  it('should take an unknown zone as UTC and say so, and survive times past the calendar', () => {
    const told = times({ zone: 'Nowhere/<b>' });
    expect(told.zone).toBe('UTC');
    expect(told.momentOf(0)).toBe('09:15:30');
    expect(told.momentOf(1e15)).toBe('1000000000000000.0 s');
  });
});
