// Whole walks on the bench: what is told of each pin in the light of all the others, live, judged again from the
// captures, and decided anew from the readings.
import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../src/bench/faults.js';
import { healthyReading } from '../../../src/bench/healthy.js';
import { usualError } from '../../../src/bench/meter.js';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { type RecheckHeader, recheckHeader } from '../../../src/core/recheck/recheck-header.js';
import { noRework } from '../../../src/core/rework/rework-state.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { rejudge } from '../../../src/core/walk/rejudge.js';
import { rerunSession } from '../../../src/core/walk/rerun.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { type LiveWalk, misnamed, walkOnBench } from '../../bench/support/live-walk.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';

const demo = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');

/** The factor by which a line must drift on this board to read so many times its nominal. */
const drift = (profile: Profile, line: string, seed: number, times: number): number => {
  const expected = profile.lines[line]?.expect?.resistance;
  const healthy = healthyReading(profile, line, 'resistance', seed);
  if (typeof expected !== 'object' || healthy === null) throw new Error(`${line} reads nothing`);
  return (times * expected.nominal) / healthy;
};

const drifted = (profile: Profile, line: string, seed: number, times: number): Fault => ({
  kind: 'drifted',
  line,
  factor: drift(profile, line, seed, times),
});

const walk = (
  profile: Profile,
  seed: number,
  scale: number,
  faults: readonly Fault[] = [],
): LiveWalk => {
  const error = { ...usualError, scale, leadOhms: 0 };
  const bench = { scenario: 'healthy', seed } as const;
  const live = walkOnBench({ driver, profile, bench, setup: { seed, error, faults } });
  expect(live.finished).toBe(true);
  expect(misnamed(live)).toEqual([]);
  return live;
};

const openedOf = (events: readonly WalkEvent[]): EventOf<'session-opened'> =>
  events[0] as EventOf<'session-opened'>;

const stateOf = (events: readonly WalkEvent[]): WalkState =>
  events.slice(1).reduce<WalkState>(evolve, openWalk(openedOf(events)));

const notNormal = ({ plan, pins }: WalkState): string[] =>
  plan.pins.flatMap(({ line, index }) => {
    const verdict = pins[index]?.verdict ?? 'unread';
    return verdict === 'normal' ? [] : [`${line} ${verdict}`];
  });

const scaleOf = ({ signal }: WalkState['shiftsTold']): number =>
  signal !== null && 'scale' in signal ? signal.scale : Number.NaN;

const decided = (events: readonly WalkEvent[]): readonly WalkEvent[] =>
  events.filter(({ type }) => type !== 'reading-taken' && type !== 'session-opened');

/** The same three ways as a technician has: live, `rerun`, and `rerun --from-readings`. */
const judgedAlike = ({ events }: LiveWalk): readonly string[] => {
  const state = stateOf(events);
  const again = rejudge(state, openedOf(events).profile.content);
  expect(again.filter(({ judged, before }) => judged.verdict !== before)).toEqual([]);
  const [opened, ...stored] = events.map(({ seq: _, ...event }) => event as WalkEvent);
  const anew = [...rerunSession(opened as EventOf<'session-opened'>, stored)];
  expect(decided(anew)).toEqual(decided(stored));
  return notNormal(state);
};

describe('a walk by a meter that reads 6 % more', () => {
  it.each([1, 2, 3, 6, 11])('should be judged right in every respect, board %i', (seed) => {
    const live = walk(demo, seed, 1.06, [
      { kind: 'open', line: 'LANE2_N', at: 'J7 pin 9' },
      // Leaky: 86 % of its nominal, and within its limits as this meter shows it.
      drifted(demo, 'BUS_DATA', seed, 0.86),
      // Healthy at 107 % of its nominal, and beyond its limit as this meter shows it. Walked before a shift is known.
      drifted(demo, 'LANE0_P', seed, 1.07),
      drifted(demo, 'LANE0_N', seed, 1.07),
    ]);
    expect(judgedAlike(live)).toEqual(['LANE2_N open', 'BUS_DATA low']);
    const { shiftsTold, pins } = stateOf(live.events);
    // A board's own lines lie up to 4 % off all together; what is told is board and meter in one.
    expect(Math.abs(scaleOf(shiftsTold) - 1.06)).toBeLessThan(0.03);
    expect(pins[1]?.because).toContain('meter-shift');
  });

  it('should leave unsure, and not misjudge, what hangs on a shift too small to be told', () => {
    const seed = 8;
    const live = walk(demo, seed, 1.06, [
      { kind: 'open', line: 'LANE2_N', at: 'J7 pin 9' },
      drifted(demo, 'BUS_DATA', seed, 0.86),
      drifted(demo, 'LANE0_P', seed, 1.07),
      drifted(demo, 'LANE0_N', seed, 1.07),
    ]);
    const { shiftsTold, pins } = stateOf(live.events);
    expect(shiftsTold.signal).toBeNull();
    expect(judgedAlike(live)).toEqual([
      'LANE0_P unsure',
      'LANE0_N unsure',
      'LANE2_N open',
      'BUS_DATA unsure',
    ]);
    for (const at of [1, 2]) expect(pins[at]?.advice).toBeDefined();
  });

  it('should tell anew what was judged before the shift was known, once, with its reason', () => {
    const seed = 3;
    const live = walk(demo, seed, 1.06, [drifted(demo, 'LANE0_P', seed, 1.08)]);
    const told = live.events.filter((event) => event.type === 'pin-judged' && event.pin === '2');
    expect(told.at(0)).toMatchObject({ verdict: 'high' });
    expect(told.filter((event) => 'anew' in event)).toEqual([
      expect.objectContaining({ verdict: 'normal', anew: true, agreed: true }),
    ]);
    expect(judgedAlike(live)).toEqual([]);
  });

  it('should be unsure on a limit, not wrong, and say what would help', () => {
    const seed = 3;
    const scale = scaleOf(stateOf(walk(demo, seed, 1.06).events).shiftsTold);
    const onLimit = (1.12 * scale) / 1.06;
    const live = walk(demo, seed, 1.06, [drifted(demo, 'FRAME_SYNC', seed, onLimit)]);
    expect(judgedAlike(live)).toEqual(['FRAME_SYNC unsure']);
    const { pins, plan } = stateOf(live.events);
    const at = plan.pins.find(({ line }) => line === 'FRAME_SYNC')?.index ?? -1;
    expect(pins[at]?.advice).toBeDefined();
  });

  it.each([2, 4])('should find nothing on a healthy board, board %i', (seed) => {
    expect(judgedAlike(walk(demo, seed, 1.06))).toEqual([]);
  });
});

describe('a group that is off', () => {
  const lane = ['LANE0_P', 'LANE0_N', 'LANE1_P', 'LANE1_N', 'LANE2_P', 'LANE2_N', 'STROBE_P'];
  const group = [...lane, 'STROBE_N'];
  const off = (seed: number, times: number): Fault[] =>
    group.map((line) => drifted(demo, line, seed, times));
  const found = group.map((line) => `${line} low`);

  it.each([3, 11])('should not be hidden by a shift, board %i', (seed) => {
    const live = walk(demo, seed, 1, off(seed, 0.84));
    expect(judgedAlike(live)).toEqual(found);
    expect(stateOf(live.events).shiftsTold.signal).toBeNull();
  });

  it.each([3, 11])('should stay visible on a meter that reads 6 percent more, board %i', (seed) => {
    const live = walk(demo, seed, 1.06, off(seed, 0.84));
    expect(judgedAlike(live)).toEqual(found);
    expect(stateOf(live.events).shiftsTold.signal).not.toBeNull();
  });
});

describe('a walk of a connector of which nothing is known', () => {
  const blank = shippedProfile('blank-24');

  it.each([1, 2])('should find nothing on a healthy board, and claim little, board %i', (seed) => {
    const live = walk(blank, seed, 1);
    expect(judgedAlike(live)).toEqual([]);
    const { plan, pins } = stateOf(live.events);
    const alone = plan.pins.filter(
      ({ kind, mate, group }) => kind === 'signal' && mate === undefined && group === undefined,
    );
    for (const { index } of alone) expect(pins[index]?.confidence).toBeLessThan(0.95);
  });

  it.each([1, 4])('should find what mates and other pins of a line speak against, %i', (seed) => {
    const live = walk(blank, seed, 1, [
      { kind: 'open', line: 'SENSE_N' },
      { kind: 'short', line: 'LINK_RX', ohms: 0.5 },
      { kind: 'drifted', line: 'EXC_P', factor: 1.4 },
    ]);
    const { plan, pins } = stateOf(live.events);
    const of = (line: string) => pins[plan.pins.find((pin) => pin.line === line)?.index ?? -1];
    expect(of('SENSE_N')).toMatchObject({ verdict: 'open', because: ['mate-conducts'] });
    expect(of('LINK_RX')).toMatchObject({ verdict: 'short', because: ['shorted'] });
    expect(of('EXC_P')).toMatchObject({ verdict: 'unsure', because: ['mate-differs'] });
    judgedAlike(live);
  });
});

describe('a recheck by the meter of the walk before', () => {
  const seed = 11;
  const faults = (profile: Profile): readonly Fault[] => [
    drifted(profile, 'BUS_DATA', seed, 0.86),
    { kind: 'open', line: 'LANE1_N' },
  ];
  const before = stateOf(walk(demo, seed, 1.06, faults(demo)).events);
  const of = { file: 'before.jsonl', begins: 'a'.repeat(64), fingerprint: 'b'.repeat(64) };
  const header = recheckHeader(before, noRework, of);
  const recheck = (asked: RecheckHeader): LiveWalk =>
    walkOnBench({
      driver,
      profile: demo,
      bench: { scenario: 'healthy', seed },
      setup: { seed, error: { ...usualError, scale: 1.06, leadOhms: 0 }, faults: faults(demo) },
      recheck: asked,
    });

  it('should not call a leaky line normal because it walks too few lines to tell the shift', () => {
    if (header === null) throw new Error('there is nothing to walk again');
    const again = recheck(header);
    expect(notNormal(stateOf(again.events))).toEqual(['LANE1_N open', 'BUS_DATA low']);
    expect(again.events.find(({ type }) => type === 'shift-estimated')).toMatchObject({
      lines: 'signal',
      shift: before.shifts.signal,
    });
    const { shifts: _, ...without } = header;
    expect(notNormal(stateOf(recheck(without).events))).not.toContain('BUS_DATA low');
  });
});
