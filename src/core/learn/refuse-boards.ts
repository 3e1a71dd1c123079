// Which boards cannot be learned from, and why: another function or polarity, another connector, nothing read, or
// the same board given twice, which would make two of one.
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import type { Board } from './board.js';

export type BoardRefusal = { readonly board: string } & (
  | { readonly because: 'nothing-read' }
  | {
      readonly because: 'other-function';
      readonly is: MeasureFunction;
      readonly wanted: MeasureFunction;
    }
  | { readonly because: 'other-polarity'; readonly is: Polarity; readonly wanted: Polarity }
  | {
      readonly because: 'other-connector';
      readonly pin: string;
      readonly line: string;
      /** What the profile has there; null for no such pin. */
      readonly profileLine: string | null;
    }
  | { readonly because: 'same-board'; readonly as: string }
);

export interface Wanted {
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
}

/** One refusal a board at most, in the order of the boards. */
export const refuseBoards = (
  boards: readonly Board[],
  profile: Profile,
  wanted: Wanted,
): readonly BoardRefusal[] => {
  const lineOf = new Map(profile.connector.pins.map(({ pin, line }) => [pin, line]));
  return boards.flatMap((board, at): readonly BoardRefusal[] => {
    const { name, pins } = board;
    if (pins.length === 0) return [{ board: name, because: 'nothing-read' }];
    if (board.function !== wanted.function) {
      const { function: is } = board;
      return [{ board: name, because: 'other-function', is, wanted: wanted.function }];
    }
    if (board.polarity !== wanted.polarity) {
      const { polarity: is } = board;
      return [{ board: name, because: 'other-polarity', is, wanted: wanted.polarity }];
    }
    const stray = pins.find(({ pin, line }) => lineOf.get(pin) !== line);
    if (stray !== undefined) {
      const { pin, line } = stray;
      const profileLine = lineOf.get(pin) ?? null;
      return [{ board: name, because: 'other-connector', pin, line, profileLine }];
    }
    const twin = boards.slice(0, at).find((other) => isSameBoard(board, other));
    return twin === undefined ? [] : [{ board: name, because: 'same-board', as: twin.name }];
  });
};

/** So many values that agree to the last digit are one walk, however often it was copied. */
const leastForTwin = 8;

const isSameBoard = (a: Board, b: Board): boolean => {
  if (a.wallTime !== null && a.wallTime === b.wallTime) return true;
  const values = new Map(a.pins.map(({ pin, value }) => [pin, value]));
  const shared = b.pins.filter(({ pin, value }) => value !== null && values.get(pin) != null);
  return (
    shared.length >= leastForTwin && shared.every(({ pin, value }) => values.get(pin) === value)
  );
};
