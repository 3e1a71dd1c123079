// What each line read on each board, its pins taken together. A pin that reads clearly more than another pin of the
// same line has a joint in its way: it is told, and left out.
import { alikeWithin, coverage } from '../context/alike.js';
import { median } from '../numbers/median.js';
import { siUnit } from '../reading.js';
import type { Board, BoardPin } from './board.js';

export interface LineValue {
  readonly board: string;
  /** Ohm or volt; null for overload. */
  readonly value: number | null;
  readonly standardUncertainty: number | null;
  readonly range?: number;
}

/** What next to nothing is, in ohm or volt: no line is expected to read it. */
const nextToNothing = 1e-6;

export const readsFigure = <T extends { readonly value: number | null }>(
  read: T,
): read is T & { readonly value: number } => read.value !== null && read.value >= nextToNothing;

export interface StrayPin {
  readonly board: string;
  readonly pin: string;
  readonly line: string;
  readonly value: number | null;
}

export interface LineValues {
  /** By line, one value a board at most, in the order of the boards. */
  readonly values: ReadonlyMap<string, readonly LineValue[]>;
  readonly strays: readonly StrayPin[];
}

/** Two touches of one line differ by this for the contact alone. Common practice, no source. */
const contact = { Ω: 0.3, V: 0.003 } as const;

/** @param lines the lines to be looked at: not the grounds, which differ by their contacts only */
export const lineValues = (boards: readonly Board[], lines: ReadonlySet<string>): LineValues => {
  const values = new Map<string, LineValue[]>();
  const strays: StrayPin[] = [];
  for (const { name: board, function: measure, pins } of boards) {
    const allowed = contact[siUnit(measure)];
    for (const [line, own] of byLine(pins.filter((pin) => lines.has(pin.line)))) {
      const { kept, stray } = withoutStrays(own, allowed);
      for (const { pin, value } of stray) strays.push({ board, pin, line, value });
      const merged = { board, ...together(kept) };
      values.set(line, [...(values.get(line) ?? []), merged]);
    }
  }
  return { values, strays };
};

const byLine = (pins: readonly BoardPin[]): ReadonlyMap<string, readonly BoardPin[]> => {
  const lines = new Map<string, BoardPin[]>();
  for (const pin of pins) lines.set(pin.line, [...(lines.get(pin.line) ?? []), pin]);
  return lines;
};

const withoutStrays = (
  pins: readonly BoardPin[],
  allowed: number,
): { kept: readonly BoardPin[]; stray: readonly BoardPin[] } => {
  const lowest = pins.reduce<BoardPin | null>(
    (least, pin) =>
      pin.value !== null && (least?.value == null || pin.value < least.value) ? pin : least,
    null,
  );
  if (lowest?.value == null) return { kept: pins, stray: [] };
  const { value: least, standardUncertainty } = lowest;
  const isStray = (pin: BoardPin): boolean => {
    if (pin.value === null) return true;
    const doubt = coverage * Math.hypot(pin.standardUncertainty ?? 0, standardUncertainty ?? 0);
    return pin.value - least > Math.max(alikeWithin * least, doubt, allowed);
  };
  return { kept: pins.filter((pin) => !isStray(pin)), stray: pins.filter(isStray) };
};

const together = (pins: readonly BoardPin[]): Omit<LineValue, 'board'> => {
  const [first] = pins as readonly [BoardPin];
  const { standardUncertainty, range } = first;
  const read = pins.flatMap(({ value }) => (value === null ? [] : [value]));
  return {
    value: read.length === 0 ? null : median(read),
    standardUncertainty,
    ...(range === undefined ? {} : { range }),
  };
};
