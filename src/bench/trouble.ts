// What can go wrong between meter and program, as data with its moment: a lead pulled and put back, a meter
// that falls silent, garbled lines, a button pressed by a sleeve. For training and for tests.
import type { MeasureFunction } from '../core/reading.js';
import type { Button } from './meter.js';

export type Trouble =
  /** The lead is out for so long; nothing is sent or received. */
  | { readonly atS: number; readonly kind: 'drop'; readonly forS: number }
  /** The link is up and the meter says nothing. */
  | { readonly atS: number; readonly kind: 'silence'; readonly forS: number }
  /** Each line sent meanwhile arrives damaged. */
  | { readonly atS: number; readonly kind: 'garbage'; readonly forS: number }
  /** A button of the meter is pressed and stays pressed until the technician sets it right. */
  | { readonly atS: number; readonly kind: 'button'; readonly button: Button }
  /** The dial is turned to another function, or an instrument switched at its panel. */
  | { readonly atS: number; readonly kind: 'dial'; readonly to?: MeasureFunction }
  /** The meter switches itself off. */
  | { readonly atS: number; readonly kind: 'off' };

export type LineTrouble = Extract<Trouble, { kind: 'silence' | 'garbage' }>;
export type Drop = Extract<Trouble, { kind: 'drop' }>;

export const isDrop = (trouble: Trouble): trouble is Drop => trouble.kind === 'drop';

const isLineTrouble = (trouble: Trouble): trouble is LineTrouble =>
  trouble.kind === 'silence' || trouble.kind === 'garbage';

/** The line as it arrives, or null when it does not. */
export const throughTrouble = (
  line: string,
  atS: number,
  troubles: readonly Trouble[],
): string | null => {
  const now = troubles
    .filter(isLineTrouble)
    .find((trouble) => atS >= trouble.atS && atS < trouble.atS + trouble.forS);
  if (now === undefined) return line;
  return now.kind === 'silence' ? null : damaged(line);
};

/** Half of the line is lost and a stray control byte stands for it, as a wrong baud rate makes it. */
const damaged = (line: string): string => `\u0000${line.slice(Math.ceil(line.length / 2))}`;
