import { expect, test } from 'vitest';
import type { Numbered, WalkEvent } from '../../src/core/events.js';
import { openReworkDesk } from '../../src/session/rework-desk.js';
import { opened } from '../store/sample-session.js';

const bench = (before: readonly WalkEvent[] = []) => {
  let t = 50;
  const timers = new Map<number, { at: number; call: () => void }>();
  let nth = 0;
  const events: WalkEvent[] = [opened, ...before];
  const record = {
    opened,
    before: events.map((event, seq): Numbered => ({ ...event, seq })),
    now: () => t,
    append: (more: readonly WalkEvent[]) => {
      events.push(...more);
      return more.map((event, seq): Numbered => ({ ...event, seq }));
    },
    close: async () => undefined,
  };
  const after = (seconds: number, call: () => void): (() => void) => {
    const id = ++nth;
    timers.set(id, { at: t + seconds, call });
    return () => timers.delete(id);
  };
  const passTo = (to: number): void => {
    for (;;) {
      const due = [...timers]
        .filter(([, { at }]) => at <= to)
        .sort(([, a], [, b]) => a.at - b.at)[0];
      if (due === undefined) break;
      timers.delete(due[0]);
      t = due[1].at;
      due[1].call();
    }
    t = to;
  };
  return { record, after, passTo, told: () => events.slice(1 + before.length) };
};

test('a cue comes by itself before the limit, while nobody does anything', () => {
  const { record, after, passTo, told } = bench();
  const desk = openReworkDesk(record, { run: 20 }, { after });
  desk.act({ kind: 'confirm' });
  desk.act({ kind: 'heat-on', place: { area: 'corner' }, setting: {} });
  passTo(66);
  expect(told().map(({ type, t }) => [type, t])).toEqual([
    ['heat-cautions-confirmed', 50],
    ['heat-started', 50],
    ['heat-limit-met', 65],
  ]);
  desk.act({ kind: 'heat-off', action: 'reflow' });
  const count = told().length;
  passTo(200);
  expect(told()).toHaveLength(count);
});

test('heat that was on when the program ended is closed with what is known', () => {
  const { record, after, told } = bench([
    { type: 'heat-started', t: 20, area: 'corner' },
    {
      type: 'heat-limit-met',
      t: 33,
      area: 'corner',
      limit: 'run',
      stage: 'near',
      seconds: 13,
      allowed: 18,
    },
  ]);
  const desk = openReworkDesk(record, {}, { after });
  expect(told()).toEqual([
    { type: 'heat-stopped', t: 50, area: 'corner', seconds: 13, ended: 'lost' },
  ]);
  expect(desk.state.runs).toMatchObject([{ seconds: 13, atLeast: true }]);
});
