import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../../src/core/events.js';
import { accountOf } from '../../../src/core/report/account.js';
import { pinsOf } from '../../../src/core/report/pin-facts.js';
import { eventful, judged, numbered, opened, settled } from '../../report/session-events.js';

const account = (events: readonly WalkEvent[]) => {
  const made = accountOf(numbered(events));
  if (made === null) throw new Error('no account');
  return made;
};

const pin = (events: readonly WalkEvent[], name: string) => {
  const found = pinsOf(account(events)).find(({ planned }) => planned.pin === name);
  if (found === undefined) throw new Error(`no pin ${name}`);
  return found;
};

describe('accountOf', () => {
  it('should refuse events without a header', () => {
    expect(accountOf(numbered(eventful.slice(1)))).toBeNull();
    expect(accountOf([])).toBeNull();
  });

  it('should fold the verdicts as the walk does: the last one counts', () => {
    const verdicts = pinsOf(account(eventful)).map(({ record }) => record.verdict);
    expect(verdicts).toEqual([
      'normal',
      'open',
      'normal',
      'low',
      'unsure',
      'normal',
      'normal',
      'unread',
    ]);
  });

  it('should count only touches that led to the verdict that stands', () => {
    const events = [
      opened,
      settled({ t: 1, touch: 0, pin: '4', value: 4700, u: 9 }),
      judged(1, '4', 'normal'),
      settled({ t: 2, touch: 1, pin: '4', value: 1200, u: 9 }),
      judged(2, '4', 'low'),
      settled({ t: 3, touch: 2, pin: '4', value: 1210, u: 9 }),
      judged(3, '4', 'low'),
    ];
    expect(pin(events, '4').touches).toHaveLength(3);
    expect(pin(events, '4').agreeing).toBe(2);
  });

  it('should move a touch to the pin it was renamed to', () => {
    const events = [
      opened,
      settled({ t: 1, touch: 0, pin: '2', value: 388, u: 1 }),
      judged(1, '2', 'normal'),
      { type: 'walk-realigned', t: 2, shift: 1, pin: '3', because: 'fits-better' } as const,
      judged(2, '2', 'unread'),
      settled({ t: 2, touch: 0, pin: '3', value: 388, u: 1 }),
      judged(2, '3', 'normal'),
    ];
    expect(pin(events, '2').touches).toEqual([]);
    expect(pin(events, '3').touches.map(({ touch }) => touch)).toEqual([0]);
  });

  it('should take an open as confirmed when the technician said so, and only then', () => {
    expect(pin(eventful, '2').confirmed).toBe(true);
    const byContact = eventful.map((event) =>
      event.type === 'question-answered' ? { ...event, by: 'contact' as const } : event,
    );
    expect(pin(byContact, '2').confirmed).toBe(false);
    expect(pin(byContact, '6').confirmed).toBe(true);
  });

  it('should keep the last advice of a pin and drop it when a later judgement has none', () => {
    expect(account(eventful).advice.get('5')).toBe('hold-longer');
    const settledLater = [...eventful, judged(700, '5', 'normal')];
    expect(account(settledLater).advice.has('5')).toBe(false);
  });

  it('should count readings by kind, the low battery sign too', () => {
    const { values, overloads, blanks, faults, lowBattery } = account(eventful).meter.counts;
    expect([blanks, faults, lowBattery]).toEqual([1, 1, 1]);
    expect(values).toBeGreaterThan(10);
    expect(overloads).toBeGreaterThan(10);
  });
});

describe('interruptions', () => {
  const told = (events: readonly WalkEvent[]) =>
    account(events).interruptions.map(({ kind, from, to }) => [kind, from, to]);

  it('should tell a lost link, a session left and readings not used, each once', () => {
    expect(told(eventful)).toEqual([
      ['link-lost', 16, 19.25],
      ['left', 60, 630],
      ['held', 646, 648.5],
    ]);
  });

  it('should leave open what was never over, and end it where the session is taken up again', () => {
    const lost = [opened, { type: 'link-changed', t: 5, change: 'lost', detail: 'gone' } as const];
    expect(told(lost)).toEqual([['link-lost', 5, null]]);
    const resumed = {
      type: 'session-resumed',
      t: 90,
      program: '0.1.0',
      wallTime: '2026-01-31T09:30:00.000Z',
      zone: 'UTC',
      tornBytes: 0,
    } as const;
    expect(told([...lost, resumed])).toEqual([
      ['link-lost', 5, 90],
      ['left', 5, 90],
    ]);
  });

  it('should not count a pause for a lost link twice, and end a silence with the readings', () => {
    const events: readonly WalkEvent[] = [
      opened,
      { type: 'link-changed', t: 5, change: 'silent', detail: 'no answer' },
      { type: 'walk-paused', t: 5, reason: 'meter-silent' },
      { type: 'walk-continued', t: 8, pin: '1' },
      { type: 'walk-paused', t: 9, reason: 'asked' },
      { type: 'walk-continued', t: 12, pin: '1' },
      { type: 'file-changed', t: 13, change: 'blocked', detail: 'disk full' },
      { type: 'file-changed', t: 15, change: 'writable', detail: '' },
    ];
    expect(told(events)).toEqual([
      ['meter-silent', 5, 8],
      ['paused', 9, 12],
      ['file-blocked', 13, 15],
    ]);
  });
});

describe('press tests', () => {
  it('should keep each with its readings and cues, the sham told apart', () => {
    const { tests, compared, ranked } = account(eventful).press;
    expect(tests.map(({ judged: { part, finding }, sham }) => [part, finding, sham])).toEqual([
      ['FL1', 'loose', false],
      ['bare-board', 'steady-open', true],
    ]);
    expect(tests[0]?.cues).toHaveLength(8);
    expect(tests[0]?.points.some(({ value }) => value !== null)).toBe(true);
    expect(tests[1]?.points.every(({ value }) => value === null)).toBe(true);
    expect(compared).toHaveLength(1);
    expect(ranked?.suspects[0]?.id).toBe('FL1 pad 1');
  });

  it('should take no readings from outside a press test', () => {
    const before = account(eventful).press.tests[0]?.points[0]?.t ?? 0;
    expect(before).toBeGreaterThan(30);
  });
});
