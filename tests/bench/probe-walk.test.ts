// A technician who probes what the program proposes until it proposes nothing more: the fault is named at its place.
import { describe, expect, it } from 'vitest';
import type { Fault } from '../../src/bench/faults.js';
import { rerun } from '../../src/core/walk/rerun.js';
import { shippedDriver } from '../support/driver-files.js';
import { misnamed, openedWith, walkOnBench } from './support/live-walk.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');

const walkWith = (fault: Fault, answers: 'ground-taps' | 'key') =>
  walkOnBench({
    driver,
    profile,
    bench: { probes: 'proposed', answers, pace: 'steady' },
    setup: { faults: [fault] },
    afterwardsS: 900,
  });

describe('proposed probes on the virtual bench', () => {
  it.each<[string, Fault, 'ground-taps' | 'key']>([
    ['FL3 pad 4', { kind: 'open', line: 'LANE2_P', at: 'FL3 pad 4' }, 'ground-taps'],
    ['R23 pad 2', { kind: 'open', line: 'TOUCH_INT', at: 'R23 pad 2' }, 'key'],
  ])('should isolate a torn %s', (id, fault, answers) => {
    const walk = walkWith(fault, answers);
    const { events, inputs } = walk;
    const ranked = events.findLast((event) => event.type === 'suspects-ranked');
    const probes = events.filter(({ type }) => type === 'place-judged');
    expect(ranked?.suspects[0]).toMatchObject({ id, lines: [fault.line] });
    expect(ranked?.suspects[0]?.probability).toBeGreaterThan(0.75);
    expect(probes.length).toBeGreaterThanOrEqual(1);
    expect(probes.length).toBeLessThanOrEqual(8);
    expect(misnamed(walk)).toEqual([]);
    const again = [...rerun(openedWith(driver, profile), inputs)];
    expect(again.map(({ type }) => type)).toEqual(events.map(({ type }) => type));
  });
});
