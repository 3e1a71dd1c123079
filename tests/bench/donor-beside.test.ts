// Two boards on the bench, walked in turns: whatever the hands do, no value may get the other board's name or another
// pin's. These few seeds stand for a sweep of many.
import { describe, expect, it } from 'vitest';
import { foldStored, openStored } from '../../src/core/walk/fold-stored.js';
import type { WalkState } from '../../src/core/walk/state.js';
import { shippedDriver } from '../support/driver-files.js';
import { misnamed, verdictsOf, walkOnBench } from './support/live-walk.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');

const walk = (seed: number, rate: number, scenario: 'demo' | 'healthy') =>
  walkOnBench({
    driver,
    profile,
    patienceS: 1500,
    bench: { seed, rate, scenario, donor: true, pace: 'usual' },
    opening: { donor: 'beside' },
  });

describe('two boards walked in turns on the bench', () => {
  it.each([
    [1, 20, 'demo', ['5 open', '33 low']],
    [2, 20, 'demo', ['5 open', '33 low']],
    [3, 5, 'demo', ['5 open', '33 low']],
    [4, 20, 'healthy', []],
  ] as const)(
    'should name every pin right: seed %d at %d readings/s, %s',
    (seed, rate, scenario, found) => {
      const walked = walk(seed, rate, scenario);
      expect(walked.finished).toBe(true);
      expect(misnamed(walked)).toEqual([]);
      const faulty = [...verdictsOf(walked.events)]
        .filter(([, verdict]) => verdict !== 'normal' && verdict !== 'unsure')
        .map(([pin, verdict]) => `${pin} ${verdict}`);
      expect(faulty).toEqual(found);
    },
  );

  it('should come to the same state from its file, at every event', () => {
    const { events } = walk(1, 20, 'healthy');
    const [opened, ...rest] = events;
    if (opened?.type !== 'session-opened') throw new Error('no opening');
    let state: WalkState = openStored(opened);
    for (const event of rest) {
      state = foldStored(state, event);
      if (event.type !== 'pin-judged' || event.board !== 'donor') continue;
      const at = state.plan.pins.findIndex(({ pin }) => pin === event.pin);
      const value = state.pins[at]?.value ?? null;
      const expected = state.plan.pins[at + 1]?.expected;
      if (value === null || state.plan.pins[at]?.kind === 'ground') continue;
      expect(expected).toMatchObject({ nominal: value });
    }
    expect(state.stage).toBe('finished');
  });
});
