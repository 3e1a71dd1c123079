import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import { chainView } from '../../../src/core/suspects/chain-view.js';
import type { Evidence } from '../../../src/core/suspects/evidence.js';
import type { Posterior } from '../../../src/core/suspects/posterior.js';
import { visitCases } from '../../../src/core/suspects/posterior.js';
import { defaultPriors, type Sort } from '../../../src/core/suspects/priors.js';
import { rankSuspects } from '../../../src/core/suspects/rank-suspects.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { bruteForce } from './brute-force.js';
import { randomEvidence } from './random-evidence.js';
import { smallBoard } from './small-board.js';

/** What trying everything can try in a moment: some sorts of places are taken for sound. */
interface Board {
  readonly name: string;
  readonly profile: Profile;
  readonly sound: readonly Sort[];
}

const boards: readonly Board[] = [
  {
    name: 'two lines through one filter',
    profile: smallBoard({ A: { chain: 'pin_1 FL1 U1' }, B: { chain: 'pin_2 FL1' } }),
    sound: ['unnamed'],
  },
  {
    name: 'two lines with a protection part and a chip in common',
    profile: smallBoard({ A: { chain: 'pin_1 [TV1] U1' }, B: { chain: 'pin_2 [TV1] U1' } }),
    sound: ['unnamed', 'branch-on-line', 'chip-on-line'],
  },
  {
    name: 'a line of two parts with a branch that reads near-normal, and a ground',
    profile: smallBoard({
      A: { chain: 'pin_1 [R9=1030] R1_pad R1 R2 U1' },
      G: { kind: 'ground' },
    }),
    sound: [],
  },
  {
    name: 'a line on two pins, and one where overload is normal',
    profile: smallBoard({
      A: { chain: 'both_pins R1', pins: 2 },
      B: { chain: 'pin_3 C1', expect: 'overload' },
    }),
    sound: [],
  },
  {
    name: 'three lines of which two pairs share a part',
    profile: smallBoard({
      A: { chain: 'FL1' },
      B: { chain: 'FL1 FL2' },
      C: { chain: 'FL2 U2' },
    }),
    sound: ['unnamed', 'pin-joint'],
  },
];

const marginals = ({ model, routes }: Posterior): number[] => {
  const found = model.suspects.map(() => 0);
  for (const route of routes) {
    const own = model.suspects.map(() => 0);
    visitCases(route, ({ suspects }, _slice, probability) => {
      for (const suspect of suspects) own[suspect] = (own[suspect] as number) + probability;
    });
    own.forEach((probability, suspect) => {
      if (probability > 0) found[suspect] = probability;
    });
  }
  return found;
};

/** Priors so high that several faults at once have weight, which rare ones would hide. */
const randomPriors = fc.record(
  Object.fromEntries(
    (Object.keys(defaultPriors) as Sort[]).map((sort) => [
      sort,
      fc.double({ min: 0.01, max: 0.4, noNaN: true }),
    ]),
  ),
);

const compare = (model: SuspectModel, evidence: Evidence): void => {
  const posterior = weighFaults(model, evidence);
  const suspects = rankSuspects(posterior, 0);
  const truth = bruteForce(model, evidence);
  expect(posterior.none).toBeCloseTo(truth.none, 9);
  expect(posterior.other).toBeCloseTo(truth.other, 9);
  marginals(posterior).forEach((probability, suspect) => {
    expect(probability).toBeCloseTo(truth.suspects[suspect] as number, 9);
  });
  for (const [lead, probability] of truth.leads)
    expect(
      suspects.find(({ where, id }) => where === 'lead' && id === lead)?.probability ?? 0,
    ).toBeCloseTo(probability, 9);
  model.routes.forEach(({ line, pins }, at) => {
    const { lead, other, none } = chainView(posterior, line, pins[0]);
    const known = truth.routes[at];
    expect(lead).toBeCloseTo(known?.lead ?? Number.NaN, 9);
    expect(other).toBeCloseTo(known?.other ?? Number.NaN, 9);
    expect(none).toBeCloseTo(known?.none ?? Number.NaN, 9);
  });
};

describe('the exact posterior', () => {
  it.each(boards)('should be what trying everything gives: $name', ({ profile, sound }) => {
    const plain = buildModel(profile);
    const none = Object.fromEntries(sound.map((sort) => [sort, 0]));
    fc.assert(
      fc.property(randomEvidence(plain), randomPriors, (evidence, likely) => {
        const leads = { 'ground-clip': 0.03, 'walking-lead': 0.02 };
        compare(buildModel(profile, { leads, priors: { ...likely, ...none } }), evidence);
      }),
      { seed: 5, numRuns: 5, endOnFailure: true },
    );
  });

  it('should be the prior where nothing was observed', () => {
    const model = buildModel(smallBoard({ A: { chain: 'pin_1 R1 U1' } }));
    const found = marginals(weighFaults(model, []));
    // Two faults at most on a line: what three and more would add is far below this.
    model.suspects.forEach(({ index, modes }) => {
      const prior = modes.reduce((sum, mode) => sum + mode.prior, 0);
      expect(found[index]).toBeCloseTo(prior, 5);
    });
    expect(found.length).toBe(4);
  });

  it('should refuse evidence that nothing in a model without noise explains', () => {
    const noise = { missedPin: 0, misjudged: 0 };
    const model = buildModel(smallBoard({ A: { kind: 'ground' } }), { noise });
    expect(() => weighFaults(model, [{ kind: 'pin', pin: '1', verdict: 'short' }])).toThrow(
      /no fault of this model explains/,
    );
  });

  it.each<[string, Evidence[number], RegExp]>([
    ['pin', { kind: 'pin', pin: '9', verdict: 'open' }, /no pin 9/],
    ['line', { kind: 'place', line: 'B', place: { side: 'chip' }, verdict: 'open' }, /no line B/],
    [
      'part on the line',
      { kind: 'place', line: 'A', place: { side: 'far', part: 'R7' }, verdict: 'open' },
      /does not pass through R7/,
    ],
    [
      'line on the pin pressed from',
      { kind: 'press', line: 'A', part: 'R1', pin: '9', finding: 'loose' },
      /no line A on pin 9/,
    ],
  ])('should refuse a %s the model does not have', (_, observation, message) => {
    const model = buildModel(smallBoard({ A: { chain: 'pin_1 R1 U1' } }));
    expect(() => weighFaults(model, [observation])).toThrow(message);
  });
});
