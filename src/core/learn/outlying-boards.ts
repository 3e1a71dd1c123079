// Finds boards that are not like the others: every line shifted (a meter or a temperature of its own), or many
// lines off. Of two boards that disagree it says so, and does not say which is right.
import { apartScores } from '../context/apart-scores.js';
import { median } from '../numbers/median.js';
import { outlierScore } from '../numbers/modified-z-scores.js';
import { type LineValue, readsFigure } from './line-values.js';

export type OutlyingBoard = { readonly board: string } & (
  | {
      readonly because: 'all-lines-shifted';
      /** How much more its middle line reads than on the other boards, as a fraction. */
      readonly by: number;
    }
  | { readonly because: 'many-lines-off'; readonly lines: number; readonly of: number }
  | {
      /** Told of each of two boards. */
      readonly because: 'two-disagree';
      readonly lines: number;
      readonly of: number;
    }
);

/** A board's middle line lies this near that of other boards, as a standard deviation. Common practice, no source. */
const boardSpread = 0.01;
const leastShift = 0.05;
/** A good board has no more lines than this off, and two off are a matter of lines and not of the board. */
const mostOff = 0.2;
const leastOff = 3;
const leastToCompare = 3;

/** @param tolerance of a line, as a fraction */
export const outlyingBoards = (
  names: readonly string[],
  values: ReadonlyMap<string, readonly LineValue[]>,
  tolerance: (line: string) => number,
): readonly OutlyingBoard[] => {
  const departures = names.map((board) => departuresOf(board, values, tolerance));
  const shifts = departures.map(({ ratios }) => (ratios.length < 2 ? 0 : median(ratios)));
  const { centre, scores } = apartScores(shifts.length === 0 ? [0] : shifts, boardSpread);
  return names.flatMap((board, at): readonly OutlyingBoard[] => {
    const { ratios, allowed, mismatches, compared } = departures[at] as BoardDepartures;
    const shift = (shifts[at] ?? 0) - centre;
    const off =
      mismatches +
      ratios.filter((ratio, n) => Math.abs(ratio - (shifts[at] ?? 0)) > (allowed[n] ?? 0)).length;
    const isOff = off >= leastOff && off > mostOff * compared;
    if (names.length < leastToCompare) {
      const disagrees = isOff || Math.abs(shift) > Math.log1p(leastShift) / 2;
      const lines = isOff ? off : ratios.length;
      return disagrees ? [{ board, because: 'two-disagree', lines, of: compared }] : [];
    }
    if (isOff) return [{ board, because: 'many-lines-off', lines: off, of: compared }];
    const isShifted =
      Math.abs(scores[at] ?? 0) > outlierScore && Math.abs(shift) > Math.log1p(leastShift);
    return isShifted ? [{ board, because: 'all-lines-shifted', by: Math.expm1(shift) }] : [];
  });
};

interface BoardDepartures {
  /** ln(value / middle of all boards), line by line, and how far each may go. */
  readonly ratios: readonly number[];
  readonly allowed: readonly number[];
  /** Lines that conduct where most boards do not, or the other way round. */
  readonly mismatches: number;
  readonly compared: number;
}

const departuresOf = (
  board: string,
  values: ReadonlyMap<string, readonly LineValue[]>,
  tolerance: (line: string) => number,
): BoardDepartures => {
  const ratios: number[] = [];
  const allowed: number[] = [];
  let mismatches = 0;
  let compared = 0;
  for (const [line, all] of values) {
    const own = all.find((one) => one.board === board);
    if (own === undefined || all.length < 2) continue;
    const conducting = all.filter(readsFigure).map(({ value }) => value);
    const silent = all.filter(({ value }) => value === null).length;
    compared += 1;
    if (!readsFigure(own)) {
      if (conducting.length > silent) mismatches += 1;
      continue;
    }
    if (silent > conducting.length) mismatches += 1;
    else {
      ratios.push(Math.log(own.value) - Math.log(median(conducting)));
      allowed.push(tolerance(line));
    }
  }
  return { ratios, allowed, mismatches, compared };
};
