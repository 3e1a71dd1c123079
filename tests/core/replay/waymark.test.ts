// What is worth going to in a session, and what is one place.
import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../../src/core/events.js';
import { createWaymarkList, waymarkKind } from '../../../src/core/replay/waymark.js';

const judged = (
  pin: string,
  t: number,
  verdict: 'normal' | 'open' | 'low' | 'unread',
): WalkEvent => ({
  type: 'pin-judged',
  t,
  pin,
  line: 'L',
  verdict,
  confidence: 1,
  expected: null,
  agreed: true,
});
const asked = (pin: string, t: number): WalkEvent => ({
  type: 'question-asked',
  t,
  question: 'open',
  pin,
});

const waymarksOf = (events: readonly WalkEvent[]) => {
  const list = createWaymarkList();
  events.forEach((event, before) => {
    list.take(event, before, event.t);
  });
  return list.waymarks;
};

describe('waymarkKind', () => {
  it.each<[WalkEvent, string | null]>([
    [judged('1', 1, 'normal'), null],
    [judged('1', 1, 'open'), 'verdict'],
    [judged('1', 1, 'unread'), 'verdict'],
    [asked('1', 1), 'question'],
    [{ type: 'link-changed', t: 1, change: 'lost' }, 'link'],
    [{ type: 'link-changed', t: 1, change: 'silent' }, 'link'],
    [{ type: 'link-changed', t: 1, change: 'failed' }, 'link'],
    [{ type: 'link-changed', t: 1, change: 'returned' }, null],
    [{ type: 'walk-realigned', t: 1, shift: 1, pin: '2', because: 'act' }, 'realigned'],
    [{ type: 'walk-held', t: 1, reason: 'negative', detail: '' }, 'held'],
    [{ type: 'ground-doubted', t: 1, opens: 2 }, 'ground'],
    [{ type: 'ground-missed', t: 1, value: 3 }, 'ground'],
    [{ type: 'ground-repeated', t: 1, value: 0.2 }, 'ground'],
    [{ type: 'act-taken', t: 1, act: 'note', text: 'x' }, 'note'],
    [{ type: 'act-taken', t: 1, act: 'next' }, null],
    [{ type: 'reading-taken', t: 1, function: 'diode', overload: true }, null],
    [
      {
        type: 'press-judged',
        t: 1,
        line: 'L',
        part: null,
        finding: 'loose',
        cycles: 4,
        pValue: 0.01,
        adjustedPValue: 0.02,
        answered: 4,
        pressedValue: 388,
        releasedValue: null,
      },
      'press',
    ],
  ])('should say of %j that it is %s', (event, kind) => {
    expect(waymarkKind(event)).toBe(kind);
  });
});

describe('a list of waymarks', () => {
  it('should make one place of what was decided at one moment', () => {
    const events = [
      judged('1', 1, 'normal'),
      judged('2', 2, 'open'),
      judged('3', 2, 'normal'),
      { type: 'ground-doubted', t: 2, opens: 2 } as const,
      judged('4', 3, 'low'),
    ];
    expect(waymarksOf(events)).toEqual([
      { kind: 'verdict', t: 2, from: 1, to: 4, pin: '2', verdict: 'open' },
      { kind: 'verdict', t: 3, from: 4, to: 5, pin: '4', verdict: 'low' },
    ]);
  });

  it('should pass over a verdict that confirms the one before, and keep one that differs', () => {
    const events = [judged('2', 1, 'low'), judged('2', 2, 'low'), judged('2', 3, 'open')];
    expect(waymarksOf(events).map(({ t, verdict }) => [t, verdict])).toEqual([
      [1, 'low'],
      [3, 'open'],
    ]);
  });

  it('should keep a question and its verdict apart', () => {
    const events = [asked('5', 1), judged('5', 2, 'open')];
    expect(waymarksOf(events).map(({ kind }) => kind)).toEqual(['question', 'verdict']);
  });
});
