import { describe, expect, it } from 'vitest';
import { boardWeigher } from '../../../src/core/suspects/board-weigher.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { Evidence } from '../../../src/core/suspects/evidence.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { smallBoard } from './small-board.js';

const profile = smallBoard({ A: { chain: 'pin_1 FL1 U1' }, B: { chain: 'pin_2 FL1 U1' } });
const seen: Evidence = [
  { kind: 'pin', pin: '1', verdict: 'open' },
  { kind: 'pin', pin: '2', verdict: 'normal' },
];

describe('the weigher of a board', () => {
  it('should give what weighing this evidence alone gives, whatever was asked before', () => {
    const weigh = boardWeigher(profile, profile.measure);
    weigh([{ kind: 'pin', pin: '2', verdict: 'open' }]);
    expect(weigh(seen).none).toBe(weighFaults(buildModel(profile), seen).none);
    expect(boardWeigher(profile, profile.measure)).toBe(weigh);
  });

  it('should pass over what the profile does not have', () => {
    const foreign: Evidence = [
      ...seen,
      { kind: 'pin', pin: '9', verdict: 'open' },
      { kind: 'press', line: 'Z', part: 'FL1', finding: 'loose' },
      { kind: 'place', line: 'A', place: { side: 'far', part: 'R9' }, verdict: 'open' },
    ];
    const weigh = boardWeigher(profile, profile.measure);
    expect(weigh(foreign).none).toBe(weigh(seen).none);
  });
});
