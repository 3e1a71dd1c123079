// Whole walks of the demo board by seed: whatever hands and meter do, each must come to its end with every pin named
// right. The seeds are ones on which lines that read alike, a leaky line or a line that shows nothing by design once
// left the walk standing or misnamed pins, and a few more.
import { describe, expect, it } from 'vitest';
import type { ScenarioName } from '../../src/bench/scenarios.js';
import { blankOf } from '../benchmarks/donor/donor-walks.js';
import { shippedDriver } from '../support/driver-files.js';
import { misnamed, verdictsOf, walkOnBench } from './support/live-walk.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');

/** What is called faulty; a sound line may be unsure, but no more than that. */
const faulty = (walk: ReturnType<typeof walkOnBench>): string[] =>
  [...verdictsOf(walk.events)]
    .filter(([, verdict]) => verdict !== 'normal' && verdict !== 'unsure')
    .map(([pin, verdict]) => `${pin} ${verdict}`);

interface Row {
  readonly scenario: ScenarioName;
  readonly rate: number;
  readonly seeds: readonly number[];
  readonly found: readonly string[];
}

const demo = ['5 open', '33 low'];
const rows: readonly Row[] = [
  { scenario: 'demo', rate: 20, seeds: [3, 7, 9, 21], found: demo },
  { scenario: 'demo', rate: 2.5, seeds: [202, 203, 210], found: demo },
  { scenario: 'demo', rate: 50, seeds: [201, 202], found: demo },
  { scenario: 'healthy', rate: 20, seeds: [1, 2], found: [] },
  { scenario: 'shifted-leaky', rate: 10, seeds: [9, 10, 11], found: ['8 low'] },
];

describe('a walk of the demo board', () => {
  it.each(rows)(
    'should end with every pin named right: $scenario at $rate readings/s, seeds $seeds',
    ({ scenario, rate, seeds, found }) => {
      for (const seed of seeds) {
        const walk = walkOnBench({ driver, profile, bench: { scenario, rate, seed } });
        expect({ seed, finished: walk.finished, wrong: misnamed(walk) }).toEqual({
          seed,
          finished: true,
          wrong: [],
        });
        expect(faulty(walk)).toEqual(found);
      }
    },
  );

  it.each([
    ['stream-value-unit', [2, 9]],
    ['stream-fields-flags', [1, 9]],
  ] as const)('should end so with every bad line press-tested on the way: %s', (id, seeds) => {
    for (const seed of seeds) {
      const walk = walkOnBench({
        driver: shippedDriver(id),
        profile,
        bench: { scenario: 'demo', seed },
        pressEach: true,
      });
      expect({ seed, finished: walk.finished, wrong: misnamed(walk) }).toEqual({
        seed,
        finished: true,
        wrong: [],
      });
      expect(faulty(walk)).toEqual(demo);
    }
  });
});

describe('a walk with a blank profile', () => {
  it.each([5, 20])(
    'should keep its place by what lines beside one another read, at %s readings/s',
    (rate) => {
      for (const seed of [2, 4, 6]) {
        const bench = { scenario: 'healthy', rate, seed } as const;
        const walk = walkOnBench({ driver, profile: blankOf(profile), bench });
        expect({ seed, finished: walk.finished, misnamed: misnamed(walk) }).toEqual({
          seed,
          finished: true,
          misnamed: [],
        });
        const doubts = walk.events.filter(
          (event) => event.type === 'question-asked' && event.question === 'same-or-next',
        );
        expect(doubts.length).toBeLessThan(6);
      }
    },
  );
});
