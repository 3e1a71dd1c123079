import { describe, expect, it } from 'vitest';
import { pinsOfGroups } from '../../../src/core/profile/pins-of-groups.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { chooseRecheckPins } from '../../../src/core/recheck/choose-pins.js';
import { evolveRework, noRework } from '../../../src/core/rework/rework-state.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { boardOf, readsNothing } from '../context/demo-board.js';

const profile = shippedProfile('demo');
const reflow = (part: string) =>
  evolveRework(noRework, { type: 'rework-logged', t: 900, action: 'reflow', part });

/** A walk of these groups in which only LANE1_P is bad; which lines its recheck asks for, and why. */
const chosen = (
  groups: readonly string[],
  part: string,
): ReadonlyMap<string, readonly string[]> => {
  const plan = planWalk(profile, profile.measure, pinsOfGroups(profile, groups));
  const pins = boardOf(plan, ({ line }, good) => (line === 'LANE1_P' ? readsNothing : good)).map(
    (read, at) => ({
      ...read,
      confidence: 1,
      expected: plan.pins[at]?.expected ?? null,
      agreed: true,
      touch: at,
      verdict: plan.pins[at]?.line === 'LANE1_P' ? ('open' as const) : ('normal' as const),
    }),
  );
  return new Map(
    chooseRecheckPins({ profile, plan, pins }, reflow(part)).map(({ planned, because }) => [
      planned.line,
      because,
    ]),
  );
};
const controlsIn = (lines: ReadonlyMap<string, readonly string[]>): string[] =>
  [...lines].filter(([, because]) => because.includes('control')).map(([line]) => line);

describe('the lines that must read as before', () => {
  it('should be ones that nothing else asks for, where the walk has them', () => {
    const lines = chosen(['picture-data', 'control', 'bus'], 'FL2');
    expect(controlsIn(lines)).toHaveLength(3);
    for (const line of controlsIn(lines)) expect(lines.get(line)).toEqual(['control']);
  });

  it('should be ones near heat but not worked on, where the walk was kept to lines near heat', () => {
    const lines = chosen(['picture-data'], 'FL2');
    expect(lines.get('LANE0_P')).toContain('heat');
    expect(controlsIn(lines)).toEqual(['LANE0_P', 'LANE2_P', 'LANE2_N']);
  });

  it('should never be ones through the part that was worked on', () => {
    // Every lane that the protection array hangs on is worked on with it.
    expect(controlsIn(chosen(['picture-data'], 'TV1'))).toEqual(['LANE2_P', 'LANE2_N']);
    expect(controlsIn(chosen(['picture-data'], 'U5'))).toEqual([]);
  });
});
