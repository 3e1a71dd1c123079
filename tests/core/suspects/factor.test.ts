import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  eliminate,
  type Factor,
  factorOf,
  widestTable,
} from '../../../src/core/suspects/factor.js';

const variables = 5;
const states = [2, 3, 2, 4, 3];

const arbitraryFactor = fc
  .subarray([0, 1, 2, 3, 4], { minLength: 1, maxLength: 3 })
  .chain((scope) => {
    const counts = scope.map((variable) => states[variable] as number);
    const size = counts.reduce((product, count) => product * count, 1);
    return fc
      .array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: size, maxLength: size })
      .map((values) => factorOf(scope, counts, Float64Array.from(values)));
  });

/** The value of a factor where each variable is in the given state. */
const valueAt = (
  { scope, states: counts, values, logScale }: Factor,
  at: readonly number[],
): number => {
  const place = scope.reduce(
    (index, variable, i) => index * (counts[i] as number) + (at[variable] as number),
    0,
  );
  return (values[place] as number) * Math.exp(logScale);
};

const everyAssignment = (): number[][] =>
  states.reduce<number[][]>(
    (all, count) =>
      all.flatMap((one) => Array.from({ length: count }, (_, state) => [...one, state])),
    [[]],
  );

describe('summing out of a product of tables', () => {
  it('should give what summing over every assignment gives', () => {
    fc.assert(
      fc.property(fc.array(arbitraryFactor, { minLength: 1, maxLength: 6 }), (factors) => {
        const keep = [...(factors[0] as Factor).scope];
        const sums = new Map<string, number>();
        const used = new Set(factors.flatMap(({ scope }) => scope));
        for (const at of everyAssignment()) {
          if (at.some((state, variable) => state > 0 && !used.has(variable))) continue;
          const product = factors.reduce((value, factor) => value * valueAt(factor, at), 1);
          const key = keep.map((variable) => at[variable]).join();
          sums.set(key, (sums.get(key) ?? 0) + product);
        }
        const found = eliminate(factors, keep);
        expect(found.scope).toEqual(keep);
        for (const [key, sum] of sums) {
          const at: number[] = new Array(variables).fill(0);
          key.split(',').forEach((state, i) => {
            at[keep[i] as number] = Number(state);
          });
          const value = valueAt(found, at);
          expect(Math.abs(value - sum)).toBeLessThanOrEqual(1e-12 * Math.max(1, sum));
        }
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('should keep a product of many small numbers from vanishing', () => {
    const small = Array.from({ length: 400 }, () =>
      factorOf([0], [2], Float64Array.of(1e-3, 2e-3)),
    );
    const { values, logScale } = eliminate(small, []);
    expect(values[0]).toBeGreaterThan(0);
    expect(Math.log(values[0] as number) + logScale).toBeCloseTo(400 * Math.log(2e-3), 6);
  });

  it('should refuse values that do not fit the states', () => {
    expect(() => factorOf([0], [2], Float64Array.of(1))).toThrow(RangeError);
  });

  it('should refuse to keep a variable that is nowhere', () => {
    expect(() => eliminate([factorOf([0], [2], Float64Array.of(1, 1))], [7])).toThrow(/variable 7/);
  });
});

describe('the widest table', () => {
  it('should be one link wide along a chain and the whole of a clique', () => {
    const chain = [
      [0, 1],
      [1, 2],
      [2, 3],
    ];
    expect(widestTable(chain, () => 4).entries).toBe(16);
    expect(widestTable([[0, 1, 2, 3]], () => 4)).toEqual({ scope: [0, 1, 2, 3], entries: 256 });
  });
});
