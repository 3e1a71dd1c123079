// The lines of a plan with what was read of each: a line may come out on several pins.
import { median } from '../numbers/median.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import { isMeasured, isOverloaded, type ReadPin } from './read-pin.js';

export interface LineRead {
  readonly line: string;
  /** The first of its pins in walking order; all pins of a line share what is planned for it. */
  readonly planned: PlannedPin;
  readonly pins: readonly PlannedPin[];
  /** Its pins taken together: the middle value, overload where no pin reads a value, or undefined. */
  readonly read: ReadPin | undefined;
}

export const linesRead = (plan: Plan, pins: readonly ReadPin[]): ReadonlyMap<string, LineRead> => {
  const places = new Map<string, [PlannedPin, ...PlannedPin[]]>();
  for (const pin of plan.pins) {
    const known = places.get(pin.line);
    if (known === undefined) places.set(pin.line, [pin]);
    else known.push(pin);
  }
  return new Map([...places].map(([line, own]) => [line, ofPins(own, pins)]));
};

/** One of them; undefined where the plan has no such line. */
export const lineRead = (
  plan: Plan,
  pins: readonly ReadPin[],
  line: string,
): LineRead | undefined => {
  const [planned, ...others] = plan.pins.filter((pin) => pin.line === line);
  return planned === undefined ? undefined : ofPins([planned, ...others], pins);
};

const ofPins = (
  own: readonly [PlannedPin, ...PlannedPin[]],
  pins: readonly ReadPin[],
): LineRead => ({
  line: own[0].line,
  planned: own[0],
  pins: own,
  read: together(own.map((pin) => pins[pin.index])),
});

const together = (reads: readonly (ReadPin | undefined)[]): ReadPin | undefined => {
  const measured = reads.filter(isMeasured);
  const [first] = measured;
  if (first === undefined) return reads.find((read) => isOverloaded(read));
  if (measured.length === 1) return first;
  return { ...first, value: median(measured.map(({ value }) => value)) };
};
