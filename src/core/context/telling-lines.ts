// The lines of a plan that can tell how a meter reads beside what is expected. Found once for each plan, because a
// walk asks anew with every verdict.
import type { Plan, PlannedPin } from '../profile/plan.js';
import { type ShiftClass, shiftClassOf } from './shift-class.js';

export interface TellingLine {
  readonly group: string;
  readonly expected: Expected;
  /** Its pins, by their place in walking order. */
  readonly places: readonly number[];
}

interface Expected {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export type TellingLines = Readonly<Record<ShiftClass, readonly TellingLine[]>>;

/** A line whose tolerance is wider tells too little of the meter. */
const widestTolerance = 0.35;

const found = new WeakMap<Plan['pins'], TellingLines>();

export const tellingLines = ({ pins }: Plan): TellingLines => {
  const known = found.get(pins);
  if (known !== undefined) return known;
  const lines = { signal: linesOf('signal', pins), supply: linesOf('supply', pins) };
  found.set(pins, lines);
  return lines;
};

const linesOf = (kind: ShiftClass, pins: Plan['pins']): readonly TellingLine[] => {
  const lines = new Map<string, TellingLine & { readonly places: number[] }>();
  for (const pin of pins) {
    const expected = shiftClassOf(pin) === kind ? tellingExpected(pin) : null;
    if (expected === null) continue;
    const line = lines.get(pin.line);
    if (line !== undefined) line.places.push(pin.index);
    else lines.set(pin.line, { group: independentGroup(pin), expected, places: [pin.index] });
  }
  return [...lines.values()];
};

const tellingExpected = ({ expected }: PlannedPin): Expected | null => {
  if (expected === null || expected === 'overload' || !(expected.nominal > 0)) return null;
  const tolerance = (expected.high - expected.low) / 2 / expected.nominal;
  return tolerance <= widestTolerance ? expected : null;
};

/** Lines of one group, or of one pair, or of one name, share their parts and so their departures. */
const independentGroup = ({ group, mate, line }: PlannedPin): string => {
  if (group !== undefined) return `group ${group}`;
  return mate === undefined ? `line ${line}` : `pair ${[line, mate].sort().join(' ')}`;
};
