import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import { tellingFindings, tellingVerdicts } from '../../../src/core/suspects/channel.js';
import type { Evidence, Observation } from '../../../src/core/suspects/evidence.js';
import { defaultEffort, type Probe, probesOn } from '../../../src/core/suspects/probes.js';
import { rankProbes } from '../../../src/core/suspects/rank-probes.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { observedBy } from '../../support/observed-by.js';
import { readProfile } from '../../support/read-profile.js';
import { bruteForce } from './brute-force.js';
import { randomEvidence } from './random-evidence.js';
import { smallBoard } from './small-board.js';

const withoutLeads = { leads: { 'ground-clip': 0, 'walking-lead': 0 } } as const;

const entropy = (shares: Iterable<number>): number =>
  [...shares].reduce((sum, share) => (share > 0 ? sum - share * Math.log2(share) : sum), 0);

/** What the probe tells about the places at fault, by trying every outcome on every board. */
const gainByTrying = (model: SuspectModel, evidence: Evidence, probe: Probe): number => {
  const before = bruteForce(model, evidence);
  const outcomes = probe.probe === 'press' ? tellingFindings : tellingVerdicts;
  return outcomes.reduce((gain, found) => {
    const after = bruteForce(model, [...evidence, observedBy(probe, found)]);
    return gain - (after.evidence / before.evidence) * entropy(after.places.values());
  }, entropy(before.places.values()));
};

describe('the gain of a probe', () => {
  it('should be what trying every outcome gives', () => {
    const profile = smallBoard({ A: { chain: 'J1_pin_1 R1_pad R1 R1_end U1' } });
    const model = buildModel(profile, { ...withoutLeads, priors: { joint: 0.1, part: 0.1 } });
    fc.assert(
      fc.property(randomEvidence(model), (evidence) => {
        const probes = rankProbes(weighFaults(model, evidence));
        // Cases less likely than 1e-7 are left out of the gain.
        for (const { probe, gain } of probes)
          expect(gain).toBeCloseTo(gainByTrying(model, evidence, probe), 4);
      }),
      { seed: 6, numRuns: 3, endOnFailure: true },
    );
    const open: Evidence = [{ kind: 'pin', pin: '1', verdict: 'open' }];
    expect(rankProbes(weighFaults(model, open)).length).toBeGreaterThan(4);
  });
});

const best = (model: SuspectModel, evidence: Evidence, effort = defaultEffort) =>
  rankProbes(weighFaults(model, evidence), effort)[0];

describe('the next probe', () => {
  const line = buildModel(
    smallBoard({ A: { chain: 'J1_pin_1 R1_pad R1 R1_end R2_pad R2 R2_end R3_pad R3 R3_end U1' } }),
  );
  const open: Observation[] = [{ kind: 'pin', pin: '1', verdict: 'open' }];
  const confirmed: Observation[] = [...open, ...open];
  const even = { ...defaultEffort, near: 1, far: 1, chip: 1, press: 1, 'other-ground': 1 };

  it('should halve a long chain rather than go through it in order', () => {
    const leadless = buildModel(
      smallBoard({
        A: { chain: 'J1_pin_1 R1_pad R1 R1_end R2_pad R2 R2_end R3_pad R3 R3_end U1' },
      }),
      { ...withoutLeads, priors: { 'pin-joint': 0.004, 'chip-on-line': 0.004 } },
    );
    const proposed = best(leadless, confirmed, even);
    expect(proposed?.probe).toMatchObject({ probe: 'place', place: { part: 'R2' } });
    expect(proposed?.gain).toBeGreaterThan(0.85);
  });

  it('should weigh the gain against the effort', () => {
    const far = best(line, confirmed, { ...even, near: 100, far: 100, chip: 100 });
    expect(far?.probe.probe).not.toBe('place');
  });

  it('should be on a ground when the leads are in question', () => {
    const board = buildModel(
      smallBoard({ G: { kind: 'ground' }, A: { chain: 'J1_pin_2 R1 U1' }, H: { kind: 'ground' } }),
    );
    const proposed = best(board, [
      { kind: 'pin', pin: '1', verdict: 'normal' },
      { kind: 'pin', pin: '2', verdict: 'open' },
      { kind: 'pin', pin: '3', verdict: 'open' },
    ]);
    expect(['retake', 'other-ground']).toContain(proposed?.probe.probe);
  });

  it('should be none where nothing is in question', () => {
    expect(best(line, [{ kind: 'pin', pin: '1', verdict: 'normal' }])).toBeUndefined();
    expect(best(line, [])).toBeUndefined();
  });

  it('should refuse an effort of nothing', () => {
    expect(() => best(line, open, { ...even, far: 0 })).toThrow(/far is 0/);
  });

  it('should be found on the demo board when every line is open', () => {
    const { content } = readProfile(readFileSync('profiles/demo.json', 'utf8'));
    if (content === undefined || content === null) throw new Error('the demo does not read');
    const proposed = best(
      buildModel(content),
      content.connector.pins.map(({ pin }) => ({ kind: 'pin', pin, verdict: 'open' })),
    );
    expect(['retake', 'other-ground']).toContain(proposed?.probe.probe);
  });
});

describe('the probes on a line', () => {
  it('should leave out places between which nothing can be at fault', () => {
    const model = buildModel(smallBoard({ A: { chain: 'J1_pin_1 R1 R2 U1' } }));
    const route = model.routes[0];
    if (route === undefined) throw new Error('no route');
    const places = probesOn(model, route).flatMap((probe) =>
      probe.probe === 'place' ? [Object.values(probe.place).join(' ')] : [],
    );
    expect(places).toEqual(['near R1', 'far R1', 'far R2']);
  });

  it('should be touches alone where the profile knows nothing but the pin', () => {
    const model = buildModel(smallBoard({ G: { kind: 'ground' } }));
    const route = model.routes[0];
    if (route === undefined) throw new Error('no route');
    expect(probesOn(model, route).map(({ probe }) => probe)).toEqual(['retake', 'other-ground']);
  });
});
