// What a press test has to know of the line before it begins. Refuses a line the plan does not hold.
import type { Plan } from '../profile/plan.js';
import type { MeasureFunction, Polarity } from '../reading.js';

export interface PressSetup {
  readonly line: string;
  /** The part under the tool; null where no part is named. The sham press is a part of its own name. */
  readonly part: string | null;
  /** What the line reads when whole, in the function's unit; null where it is learned before the first press. */
  readonly normal: { readonly low: number; readonly high: number } | null;
  /** Readings in another function are no evidence. */
  readonly function: MeasureFunction;
  readonly polarity?: Polarity;
  /** At or under this the line counts as shorted, in the function's unit. */
  readonly shortLimit: number;
  /** At or over this the line counts as open although a number shows. */
  readonly openLimit?: number | null;
  /** Bulk capacitance: while it charges, any value at all means that the joint is closed. */
  readonly charges?: boolean;
  /** Seconds an autoranging meter needs from overload to its first value; 0 on a fixed range. */
  readonly rangingS?: number;
}

/**
 * The setup for one line of a planned walk.
 * @throws RangeError for a line the plan does not hold.
 */
export const setupForLine = (plan: Plan, line: string, part: string | null): PressSetup => {
  const planned = plan.pins.find((pin) => pin.line === line);
  if (planned === undefined) {
    throw new RangeError(`line ${line} is on no pin of the profile; name one of its lines`);
  }
  const { expected, shortLimit, openLimit, charges } = planned;
  const normal =
    expected === null || expected === 'overload'
      ? null
      : { low: expected.low, high: expected.high };
  return {
    line,
    part,
    normal,
    function: plan.function,
    polarity: plan.polarity,
    shortLimit,
    openLimit,
    charges,
  };
};
