// Fisher's one-sided p-value for every table a press test can meet, worked out once. Refuses tables outside
// the design.
import { fishersExactTest } from '../numbers/fishers-exact-test.js';
import { mostCycles } from './press-design.js';

const table: readonly (readonly (readonly number[])[])[] = Array.from(
  { length: mostCycles + 1 },
  (_, cycles) =>
    Array.from({ length: cycles + 1 }, (_, pressed) =>
      Array.from({ length: cycles + 1 }, (_, released) =>
        fishersExactTest(
          [
            [pressed, cycles - pressed],
            [released, cycles - released],
          ],
          'greater',
        ),
      ),
    ),
);

/**
 * Chance of so many of the sightings, or more, falling into the press windows if pressing did nothing.
 * Fisher, The Design of Experiments (1935), ch. 2: four and four told apart give 1/70.
 * @param pressed press windows with the sighting, of `cycles`.
 * @param released release windows with it, of `cycles`.
 * @throws RangeError for counts outside the design.
 */
export const oneSidedP = (cycles: number, pressed: number, released: number): number => {
  const p = table[cycles]?.[pressed]?.[released];
  if (p === undefined) {
    throw new RangeError(`no table of ${pressed} and ${released} in ${cycles} cycles`);
  }
  return p;
};
