// Reduces what was read between one cue and the next to one state of the line, or to `unclear`, and says whether
// the change into it answered the cue. A change seen before the cue is never an answer.
import type { CueName } from '../inputs.js';
import { median } from '../numbers/median.js';
import type { Pace } from './pace.js';
import { isPassing, type Run, runsOf, withoutBounces } from './runs.js';
import type { Seen, Side } from './sides.js';

export interface CueWindow {
  readonly cue: CueName;
  readonly fromS: number;
  readonly toS: number;
  /** Where the line ended up and stayed; null where that is unclear. */
  readonly side: Side | null;
  /** The state was overload, not a number. */
  readonly overload: boolean;
  /** Median of the steady end, in the function's unit; null for overload and where unclear. */
  readonly value: number | null;
  /** Seconds from the cue to the first reading of that state, if it changed once after the cue. */
  readonly answerS: number | null;
  /** The line changed once, inside the answer zone. */
  readonly locked: boolean;
}

export interface WindowReadings {
  readonly cue: CueName;
  readonly fromS: number;
  readonly toS: number;
  /** All readings up to the next cue, in order, headed by those of the last moments before this one. */
  readonly seen: readonly Seen[];
  readonly updateS: number;
}

/** Below this share of its readings a state is no state. Common practice, no source. */
const leastOwnShare = 0.6;

export const reduceWindow = (window: WindowReadings, pace: Pace): CueWindow => {
  const { cue, fromS, toS, updateS } = window;
  const runs = settledRuns(window, pace.tailS);
  const last = runs.at(-1);
  const unclear: CueWindow = {
    cue,
    fromS,
    toS,
    side: null,
    overload: false,
    value: null,
    answerS: null,
    locked: false,
  };
  if (last === undefined) return unclear;

  const changes = changesAfter(runs, fromS);
  const decidesFromS = fromS + pace.allowanceS;
  const deciding = runs.filter((run) => run.to >= decidesFromS);
  const changedAndBack = deciding.length > 1 && changes.includes(deciding[0] as Run);
  const steadyFromS = Math.max(last.from, decidesFromS);
  const steadyS = last.to - steadyFromS + updateS;
  if (deciding.length === 0 || deciding.length > 2 || changedAndBack) return unclear;
  if (steadyS < pace.tailS || ownShare(last, window.seen, steadyFromS) < leastOwnShare)
    return unclear;

  const values = steadyValues(last);
  const answerS = changes.length === 1 ? last.from - fromS : null;
  return {
    ...unclear,
    side: last.side,
    overload: values.length === 0,
    value: values.length === 0 ? null : median(values),
    answerS,
    locked: answerS !== null && answerS >= pace.earliestS && answerS <= pace[cue].latestS,
  };
};

/** The share of readings from `fromS` to the end of the run that are on its side, not bounces. */
const ownShare = (run: Run, seen: readonly Seen[], fromS: number): number => {
  const within = ({ t }: Seen): boolean => t >= fromS && t <= run.to;
  return run.own.filter(within).length / seen.filter(within).length;
};

/** The runs that began after the cue. The first one seen does not count: it may have begun before. */
const changesAfter = (runs: readonly Run[], fromS: number): Run[] =>
  runs.slice(1).filter(({ from }) => from > fromS);

/** The runs of the window and of the moments before it. A passing one at its close, after another change or
 * too short to count, is left to the next window, which sees it whole. */
const settledRuns = ({ seen, fromS, updateS }: WindowReadings, tailS: number): readonly Run[] => {
  const runs = withoutBounces(runsOf(seen), updateS);
  const last = runs.at(-1);
  if (last === undefined || runs.length === 1 || !isPassing(last, updateS)) return runs;
  const isBrief = last.to - last.from + updateS < tailS;
  return isBrief || changesAfter(runs, fromS).length > 1 ? runs.slice(0, -1) : runs;
};

/** Values of a run, without the first one, which may be mixed or still settling. */
const steadyValues = ({ own, side }: Run): number[] => {
  const values = own.flatMap(({ value }) => (value === null ? [] : [value]));
  if (side === 'above' && 2 * values.length <= own.length) return [];
  return values.length > 2 ? values.slice(1) : values;
};
