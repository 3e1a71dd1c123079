import { describe, expect, it } from 'vitest';
import { boardWeigher } from '../../../src/core/suspects/board-weigher.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { Evidence } from '../../../src/core/suspects/evidence.js';
import { rankPosterior } from '../../../src/core/suspects/rank-suspects.js';
import { suspectsRanked } from '../../../src/core/suspects/suspects-ranked.js';
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

  it('should rank in less time the very suspects that the whole ranking has', () => {
    const posterior = boardWeigher(profile, profile.measure)(seen);
    const whole = rankPosterior(posterior).suspects.filter(
      ({ probability }) => probability >= 0.02,
    );
    expect(suspectsRanked(posterior).suspects).toEqual(whole.slice(0, 12));
    expect(whole.length).toBeGreaterThan(2);
  });
});
