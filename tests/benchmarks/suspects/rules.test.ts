import { describe, expect, it } from 'vitest';
import { seeded } from '../shared/random.js';
import { compareRules } from './compare-rules.js';
import { costOfPolicy, inOrder, inOrderSkipping, leastCost } from './policies.js';
import {
  type Hypothesis,
  isIsolated,
  type SharpWorld,
  sharpWorld,
  splitBy,
} from './sharp-world.js';
import { drawSmallChain, families, type SmallChain } from './small-chains.js';

const one = (): number => 1;

/** Four places in a row and three probes between them: each tells on which side of it the fault is. */
const row = (weights: readonly number[]): SharpWorld => {
  const probes = [1, 2, 3].map(
    (at) => ({ probe: 'place', line: 'A', place: { side: 'far', part: `R${at}` } }) as const,
  );
  const hypotheses = weights.map(
    (weight, place): Hypothesis => ({
      place,
      weight,
      finds: [1, 2, 3].map((at) => (place < at ? 'normal' : 'open')),
    }),
  );
  return { probes, hypotheses };
};
const chain: SmallChain = drawSmallChain('one part', seeded('any'));

describe('the sharp world', () => {
  it('should take two probes for any of four equal places at the least, and 9/4 in order', () => {
    const world = row([1, 1, 1, 1]);
    expect(leastCost(world, one)).toBe(2);
    // After 1, 2, 3 and 3 probes the fault is known.
    expect(costOfPolicy(chain, world, inOrder(world), one).cost).toBe(9 / 4);
  });

  it('should go for the likely place first where one is much likelier', () => {
    const world = row([0.9, 0.04, 0.03, 0.03]);
    expect(leastCost(world, one)).toBeCloseTo(0.9 + 0.04 * 2 + 0.06 * 3, 12);
  });

  it('should stop where no probe tells the rest apart', () => {
    const twins = row([1, 1, 1, 1]).hypotheses.slice(0, 1);
    const [first] = twins;
    if (first === undefined) throw new Error('no hypothesis');
    expect(isIsolated([first, { ...first, place: 9 }])).toBe(true);
    expect(isIsolated(row([1, 1]).hypotheses)).toBe(false);
    expect(splitBy(row([1, 1]).hypotheses, 0).size).toBe(2);
  });

  it('should skip what is certain already', () => {
    const world = row([1, 1, 1, 1]);
    const left = world.hypotheses.slice(2);
    expect(inOrderSkipping(world)(left, [], new Set())).toBe(2);
    expect(inOrder(world)(left, [], new Set([0]))).toBe(1);
  });
});

describe('the boards of the benchmark', () => {
  it.each(families)('should leave several places in question: %s', (family) => {
    const world = sharpWorld(drawSmallChain(family, seeded('boards')));
    expect(new Set(world.hypotheses.map(({ place }) => place)).size).toBeGreaterThan(1);
    expect(isIsolated(world.hypotheses)).toBe(false);
  });

  it('should be the same for the same seed', () => {
    const drawn = () => drawSmallChain('two parts', seeded('same')).model.suspects;
    expect(drawn()).toEqual(drawn());
  });
});

describe('the rules', () => {
  it.each(['two parts', 'filter, one line open'] as const)(
    'should be no better than the optimum, and the proposal near it: %s',
    (family) => {
      const costs = compareRules(family, { boards: 2, seed: 'rules', unit: 'probes' });
      expect(costs.optimum).toBeLessThanOrEqual(costs.inOrderSkipping + 1e-9);
      expect(costs.inOrderSkipping).toBeLessThan(costs.inOrder);
      expect(costs.optimum).toBeLessThanOrEqual(costs.proposed + 1e-9);
      expect(costs.proposed).toBeLessThan(1.1 * costs.optimum);
      expect(costs.givenUp).toBe(0);
    },
  );
});
