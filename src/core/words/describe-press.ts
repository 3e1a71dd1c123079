// What pressing came to, as one line of words.
import type { EventOf } from '../events.js';
import type { Words } from './words.js';
import { writeChance } from './write-chance.js';

/** What a line did while it was pressed at will. */
export const describeTrace = (
  { line, rests, excursions, medianDwell, repeats, marked }: EventOf<'press-traced'>,
  words: Words,
): string =>
  words.pressTraced(line, {
    rests,
    times: excursions.length,
    dwellS: medianDwell,
    repeats,
    marked:
      marked === null
        ? null
        : {
            presses: marked.presses,
            away: marked.awayPressed,
            between: marked.awayBetween,
            chance: writeChance(marked.pValue),
          },
  });

/** What pressing a place came to, with the p-value adjusted for repeated looks. */
export const describePress = (
  { line, part, finding, cycles, adjustedPValue }: EventOf<'press-judged'>,
  words: Words,
): string => words.pressJudged(line, part, finding, cycles, writeChance(adjustedPValue));
