// Heat against its limits: when each word is due, and for what. Limits here are the test's own.
import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import type { HeatLimits } from '../../../src/core/profile/heat-limits-format.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { decideRework, type ReworkInput } from '../../../src/core/rework/decide-rework.js';
import { heatClocks, nextLimit } from '../../../src/core/rework/heat-clock.js';
import { evolveRework, noRework, type ReworkState } from '../../../src/core/rework/rework-state.js';

const profile: Profile = {
  format: 'pinwalk-profile/1',
  id: 'tiny',
  title: 'Tiny',
  provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: { id: 'J1', pins: [{ pin: '1', line: 'GND' }] },
  lines: { GND: { kind: 'ground' } },
  parts: {
    FL1: { kind: 'filter', lines: ['GND'] },
    FL2: { kind: 'filter', lines: ['GND'] },
    R1: { kind: 'resistor', lines: ['GND'] },
  },
  areas: { ROW: { parts: ['FL1', 'FL2'], heat: { run: 20, total: 60 } } },
};
const noShop: HeatLimits = {};

const play = (inputs: readonly ReworkInput[], shop = noShop, from: ReworkState = noRework) => {
  let state = from;
  const events: WalkEvent[] = [];
  const refused: (string | null)[] = [];
  for (const input of inputs) {
    const decision = decideRework(state, input, profile, shop);
    state = decision.state;
    events.push(...decision.events);
    refused.push(decision.refused);
  }
  return { state, events, refused };
};

const confirm: ReworkInput = { kind: 'confirm', t: 100 };
const heatOn = (t: number, part: string): ReworkInput => ({
  kind: 'heat-on',
  t,
  place: { part },
  setting: { tool: 'hot-air', setPoint: 330 },
});
const heatOff = (t: number): ReworkInput => ({ kind: 'heat-off', t, action: 'reflow' });
const tick = (t: number): ReworkInput => ({ kind: 'tick', t });
const met = (events: readonly WalkEvent[]) =>
  events
    .filter((event): event is EventOf<'heat-limit-met'> => event.type === 'heat-limit-met')
    .map(({ t, limit, stage }) => [t, limit, stage]);

describe('heat under the clock', () => {
  it('should not start before the cautions are confirmed', () => {
    const { events, refused } = play([heatOn(100, 'FL1')]);
    expect([events, refused]).toEqual([[], ['cautions']]);
  });

  it('should ask for the cautions anew at the next sitting', () => {
    const { state } = play([confirm]);
    const resumed = evolveRework(state, {
      type: 'session-resumed',
      t: 500,
      program: 'pinwalk',
      wallTime: '2026-01-31T10:00:00Z',
      zone: 'Etc/UTC',
      tornBytes: 0,
    });
    expect(play([heatOn(500, 'FL1')], noShop, resumed).refused).toEqual(['cautions']);
  });

  it('should warn before a limit, at it, and then every five seconds', () => {
    const { events } = play([confirm, heatOn(100, 'FL1'), tick(131)]);
    expect(met(events)).toEqual([
      [115, 'run', 'near'],
      [120, 'run', 'passed'],
      [125, 'run', 'passed'],
      [130, 'run', 'passed'],
    ]);
  });

  it('should give no more than a quarter of a short limit as head start', () => {
    const { state } = play([confirm, heatOn(100, 'R1')], { run: 8 });
    expect(nextLimit(state, profile, { run: 8 })?.t).toBe(106);
  });

  it('should add up heat over all parts of an area, and none from elsewhere', () => {
    const { state, events } = play([
      confirm,
      heatOn(100, 'FL1'),
      heatOff(119),
      heatOn(200, 'R1'),
      heatOff(219),
      heatOn(300, 'FL2'),
      heatOff(319),
      heatOn(400, 'FL1'),
      tick(419),
    ]);
    expect(heatClocks(state, profile, noShop, { part: 'FL2' }, 419)).toEqual([
      { area: 'ROW', limits: { run: 20, total: 60 }, run: 19, total: 57 },
    ]);
    expect(met(events).filter(([, limit]) => limit === 'total')).toEqual([[417, 'total', 'near']]);
  });

  it('should say at once when an area has had its heat already', () => {
    const { events } = play([
      confirm,
      { kind: 'log', t: 110, entry: { action: 'reflow', part: 'FL2', seconds: 70 } },
      heatOn(200, 'FL1'),
      tick(200),
    ]);
    expect(met(events)).toEqual([[200, 'total', 'passed']]);
  });

  it('should take the limits of the shop where the profile has none, and stay silent without either', () => {
    expect(met(play([confirm, heatOn(100, 'R1'), tick(500)]).events)).toEqual([]);
    expect(met(play([confirm, heatOn(100, 'R1'), tick(119)], { run: 20 }).events)).toEqual([
      [115, 'run', 'near'],
    ]);
  });

  it('should count heat once that a timer and its entry both tell', () => {
    const { state, events } = play([confirm, heatOn(100, 'FL1'), heatOff(112)]);
    expect(events.map(({ type }) => type)).toEqual([
      'heat-cautions-confirmed',
      'heat-started',
      'heat-stopped',
      'rework-logged',
    ]);
    expect(state.runs.map(({ seconds }) => seconds)).toEqual([12]);
    expect(state.logged).toHaveLength(1);
  });

  it('should refuse heat twice, and an end of heat that is not on', () => {
    const { refused } = play([confirm, heatOff(100), heatOn(101, 'FL1'), heatOn(102, 'R1')]);
    expect(refused).toEqual([null, 'heat-is-off', null, 'heat-is-on']);
  });
});
