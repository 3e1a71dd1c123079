// The pins in the connector's rows, each with its verdict, and the place the screen is about.
import { cleanText } from '../clean-text.js';
import type { Verdict } from '../verdict.js';
import type { WalkState } from '../walk/state.js';
import { selectSubject } from './subject.js';

export interface StripCell {
  readonly index: number;
  readonly pin: string;
  readonly verdict: Verdict;
  /** The verdict still waits for its repeat touch. */
  readonly open: boolean;
  readonly here: boolean;
}

export interface StripRow {
  /** The row's number on the connector, or null where the profile knows none. */
  readonly row: number | null;
  readonly cells: readonly StripCell[];
}

/**
 * Rows in the order in which the walk reaches them; pins of no row share one.
 * @param here index of the pin to mark; without it the screen's subject.
 */
export const selectStrip = (
  state: WalkState,
  here: number = selectSubject(state)?.planned.index ?? -1,
): readonly StripRow[] => {
  const rows = new Map<number | null, StripCell[]>();
  for (const { index, pin, row, board } of state.plan.pins) {
    const record = state.pins[index];
    // A donor's pin is shown as the patient's: it is the same place on the connector.
    if (record === undefined || board === 'donor') continue;
    const isOnDonor = state.plan.pins[here]?.board === 'donor' && here + 1 === index;
    const cell: StripCell = {
      index,
      pin: cleanText(pin, 40),
      verdict: record.verdict,
      open: record.verdict !== 'unread' && !record.agreed,
      here: index === here || isOnDonor,
    };
    const key = row ?? null;
    const cells = rows.get(key);
    if (cells === undefined) rows.set(key, [cell]);
    else cells.push(cell);
  }
  return [...rows].map(([row, cells]) => ({ row, cells }));
};
