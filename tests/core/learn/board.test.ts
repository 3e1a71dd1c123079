import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import { gatherBoard } from '../../../src/core/learn/board.js';
import { assumedAccuracy, openSession } from '../../../src/core/walk/open-session.js';
import { small } from './good-boards.js';

const opened = openSession({
  profile: { content: small, sha256: '0'.repeat(64) },
  driver: null,
  accuracy: assumedAccuracy,
  measure: small.measure,
  link: 'virtual:demo',
  simulated: true,
  groundCheck: true,
  wallTime: '2026-01-31T09:15:30.000Z',
  zone: 'Etc/UTC',
});

const settled = (
  pin: string,
  line: string,
  value: number | undefined,
  more: Partial<EventOf<'pin-settled'>> = {},
): WalkEvent => ({
  type: 'pin-settled',
  t: 1,
  touch: 0,
  pin,
  line,
  ...(value === undefined ? { overload: true } : { value }),
  standardUncertainty: value === undefined ? null : 1.2,
  readings: 5,
  function: 'resistance',
  from: 0,
  to: 1,
  ...more,
});

const judged = (
  pin: string,
  line: string,
  verdict: EventOf<'pin-judged'>['verdict'],
): WalkEvent => ({
  type: 'pin-judged',
  t: 1,
  pin,
  line,
  verdict,
  confidence: 1,
  expected: null,
  agreed: true,
});

describe('gatherBoard', () => {
  it('should be known as simulated by what the meter calls itself', () => {
    const real = { ...opened, simulated: false };
    const says = (text: string): WalkEvent => ({
      type: 'meter-spoke',
      t: 0,
      says: 'identity',
      text,
    });
    expect(gatherBoard('a', [real, says('ACME,DMM-1,0,1')])?.simulated).toBe(false);
    expect(gatherBoard('a', [real, says('PINWALK,VIRTUAL BENCH,0,1')])?.simulated).toBe(true);
  });

  it('should take the last value of every pin, its range, and where the session comes from', () => {
    const board = gatherBoard('a.jsonl', [
      opened,
      settled('2', 'D0_P', 300),
      judged('2', 'D0_P', 'low'),
      settled('9', 'AC', undefined),
      settled('2', 'D0_P', 388, { range: 600 }),
      judged('2', 'D0_P', 'normal'),
    ]);
    expect(board).toEqual({
      name: 'a.jsonl',
      function: 'resistance',
      polarity: 'red-walks',
      wallTime: '2026-01-31T09:15:30.000Z',
      simulated: true,
      pins: [
        { pin: '2', line: 'D0_P', value: 388, standardUncertainty: 1.2, range: 600 },
        { pin: '9', line: 'AC', value: null, standardUncertainty: null },
      ],
    });
  });

  it('should leave out what wobbled and what was taken back', () => {
    const board = gatherBoard('a.jsonl', [
      opened,
      settled('2', 'D0_P', 388),
      judged('2', 'D0_P', 'wobble'),
      settled('3', 'D0_N', 392),
      judged('3', 'D0_N', 'unread'),
      settled('4', 'D1_P', 386),
      judged('4', 'D1_P', 'high'),
    ]);
    expect(board?.pins.map(({ pin }) => pin)).toEqual(['4']);
  });

  it('should be none without an opening', () => {
    expect(gatherBoard('a.jsonl', [])).toBeNull();
  });
});
