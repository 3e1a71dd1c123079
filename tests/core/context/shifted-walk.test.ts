// A whole walk on the bench by a meter that reads 6 % more: what the context makes of the captures.
import { describe, expect, it } from 'vitest';
import { healthyReading } from '../../../src/bench/healthy.js';
import { usualError } from '../../../src/bench/meter.js';
import { judgeInContext } from '../../../src/core/context/judge-in-context.js';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { judge } from '../../../src/core/walk/judge.js';
import { openWalk, type WalkState } from '../../../src/core/walk/state.js';
import { walkOnBench } from '../../bench/support/live-walk.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');

/** The factor by which a line must drift on this board to read so many times its nominal. */
const drift = (line: string, seed: number, times: number): number => {
  const expected = profile.lines[line]?.expect?.resistance;
  const healthy = healthyReading(profile, line, 'resistance', seed);
  if (typeof expected !== 'object' || healthy === null) throw new Error(`${line} reads nothing`);
  return (times * expected.nominal) / healthy;
};

const walkedState = (events: readonly WalkEvent[]): WalkState => {
  const [opened, ...rest] = events as [EventOf<'session-opened'>, ...WalkEvent[]];
  return rest.reduce<WalkState>(evolve, openWalk(opened));
};

describe('a walk by a meter that reads 6 % more', () => {
  it.each([3, 11])('should be judged rightly in every respect, board %i', (seed) => {
    const live = walkOnBench({
      driver,
      profile,
      bench: { scenario: 'healthy', seed },
      setup: {
        seed,
        error: { ...usualError, scale: 1.06, leadOhms: 0 },
        faults: [
          { kind: 'open', line: 'LANE2_N', at: 'J7 pin 9' },
          // 86 % of its nominal: within its limits as this meter shows it.
          { kind: 'drifted', line: 'BUS_DATA', factor: drift('BUS_DATA', seed, 0.86) },
          // 107 % of its nominal: healthy, and beyond its limit as this meter shows it.
          { kind: 'drifted', line: 'STROBE_P', factor: drift('STROBE_P', seed, 1.07) },
        ],
      },
    });
    expect(live.finished).toBe(true);
    const { pins, plan } = walkedState(live.events);
    const { shifts, judgements } = judgeInContext(pins, plan, judge);
    const { signal } = shifts;
    const error = signal !== null && 'scale' in signal ? Math.abs(signal.scale - 1.06) : 1;
    expect(error).toBeLessThan(3 * (signal?.standardUncertainty ?? 0));
    expect(
      judgements
        .filter(({ verdict }) => verdict !== 'normal')
        .map(({ line, verdict }) => `${line} ${verdict}`),
    ).toEqual(['LANE2_N open', 'BUS_DATA low']);
    expect(judgements).toHaveLength(40);
  });
});
