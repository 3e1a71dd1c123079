// All places pressed on one line, held against each other: the part that answers most, or, where bare board
// answers too, that none of them is to blame. Refuses an empty comparison.
import { holmAdjust } from '../numbers/holm-adjust.js';
import type { PressResult } from './press-result.js';

export interface PressedPlace {
  /** The part's name, or what the sham place is called; null where no part is named. */
  readonly place: string | null;
  /** Bare board, pressed for comparison. */
  readonly sham: boolean;
  readonly result: PressResult;
}

export interface ComparedPlace extends PressedPlace {
  readonly answers: boolean;
  /** Share of the cycles that answered. */
  readonly answeredShare: number;
  /** The place's adjusted p-value, adjusted for all places as well (Holm 1979). */
  readonly familyPValue: number;
}

export interface PartsCompared {
  /**
   * `one`: one part answers most. `tied`: several answer as often as each other, press them again.
   * `all`: every place answers, or bare board does: the board flexes or the pin joint moves.
   * `none`: no place answers.
   */
  readonly outcome: 'one' | 'tied' | 'all' | 'none';
  /** The parts meant: the one, or those tied; empty otherwise, and where the place has no name. */
  readonly parts: readonly string[];
  /** False where no sham press was made, so that flexing cannot be told from a joint. */
  readonly shamPressed: boolean;
  /** All places, the one that answers most first. */
  readonly ranking: readonly ComparedPlace[];
}

/** @throws RangeError when nothing was pressed. */
export const compareParts = (places: readonly PressedPlace[]): PartsCompared => {
  if (places.length === 0)
    throw new RangeError('no place was pressed, there is nothing to compare');
  const family = holmAdjust(places.map(({ result }) => result.adjustedPValue));
  const ranking = places
    .map((pressed, i) => compared(pressed, family[i] as number))
    .sort(mostAnsweringFirst);
  const shamPressed = places.some(({ sham }) => sham);
  const answering = ranking.filter(({ answers }) => answers);
  const [most] = answering;
  if (most === undefined) return { outcome: 'none', parts: [], shamPressed, ranking };
  const isAll = answering.length > 1 && answering.length === ranking.length;
  if (isAll || answering.some(({ sham }) => sham)) {
    return { outcome: 'all', parts: [], shamPressed, ranking };
  }
  const meant = answering.filter(({ answeredShare }) => answeredShare === most.answeredShare);
  const parts = meant.flatMap(({ place }) => place ?? []);
  return { outcome: meant.length === 1 ? 'one' : 'tied', parts, shamPressed, ranking };
};

/** Whether the line answered the presses, either way. */
export const answers = ({ finding }: PressResult): boolean =>
  finding === 'loose' || finding === 'cracked' || finding === 'bridged';

const compared = (pressed: PressedPlace, familyPValue: number): ComparedPlace => {
  const { answered, cycles } = pressed.result;
  return {
    ...pressed,
    answers: answers(pressed.result),
    answeredShare: cycles === 0 ? 0 : answered / cycles,
    familyPValue,
  };
};

const mostAnsweringFirst = (a: ComparedPlace, b: ComparedPlace): number =>
  Number(b.answers) - Number(a.answers) ||
  b.answeredShare - a.answeredShare ||
  a.familyPValue - b.familyPValue;
