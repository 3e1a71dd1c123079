// The plain rule at its best: the setting of the grid with the fewest errors, the quicker one of equals.
import { type PlainSetting, plainGrid, plainRule } from './plain-rule.js';
import { scoreWalk, type WalkScore } from './score-walk.js';
import { errorShare, type Tally, tally } from './tally.js';
import type { GeneratedWalk } from './walk-truth.js';

export interface PlainOutcome {
  readonly setting: PlainSetting;
  readonly scores: WalkScore[];
}

/** One outcome for each setting of the grid, to be filled walk by walk. */
export const emptyGrid = (): PlainOutcome[] =>
  plainGrid.map((setting) => ({ setting, scores: [] }));

export const tryPlain = (grid: readonly PlainOutcome[], walk: GeneratedWalk): void => {
  for (const { setting, scores } of grid) scores.push(scoreWalk(walk, plainRule(walk, setting)));
};

export interface BestPlain {
  readonly setting: PlainSetting;
  readonly tally: Tally;
}

/** @throws RangeError for an empty grid. */
export const bestPlain = (grid: readonly PlainOutcome[], rate?: number): BestPlain => {
  const candidates = grid.map(({ setting, scores }) => ({
    setting,
    tally: tally(scores.filter((score) => rate === undefined || score.rate === rate)),
  }));
  const [best] = candidates.sort(
    (a, b) =>
      errorShare(a.tally) - errorShare(b.tally) ||
      (a.tally.medianS ?? 99) - (b.tally.medianS ?? 99),
  );
  if (best === undefined) throw new RangeError('the grid of plain rules is empty');
  return best;
};
