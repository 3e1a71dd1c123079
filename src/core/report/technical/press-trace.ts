// The trace of a press test as a report draws it: readings over time, thinned, with the times of pressing.
import type { PlannedPin } from '../../profile/plan.js';
import { placeFromLevel, placeOf } from '../../select/scale.js';
import type { Trace } from '../document.js';
import type { PressPoint } from '../press-log.js';

/** More than a printer can tell apart. */
const mostDrawn = 600;

export const pressTrace = ({
  points,
  pin,
  ...rest
}: Pick<Trace, 'caption' | 'presses' | 'words'> & {
  readonly points: readonly PressPoint[];
  readonly pin: PlannedPin | undefined;
}): Trace => {
  const step = Math.ceil(points.length / mostDrawn);
  const drawn = points.filter((_, at) => at % step === 0);
  const place = placer(points, pin);
  return {
    kind: 'trace',
    ...rest,
    from: points[0]?.t ?? 0,
    to: points.at(-1)?.t ?? 0,
    points: drawn.map(({ t, value }) => ({ t, at: value === null ? null : place(value) })),
    hasLimits: isBounded(pin),
  };
};

const isBounded = (pin: PlannedPin | undefined): boolean =>
  typeof pin?.expected === 'object' && pin.expected !== null;

/** Between the limits of a good board where there are any, else about the middle of what was read. */
const placer = (points: readonly PressPoint[], pin: PlannedPin | undefined) => {
  const values = points.flatMap(({ value }) => (value === null ? [] : [value]));
  const level = values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 1;
  return (value: number): number =>
    placeOf(value, pin?.expected ?? null)?.at ?? placeFromLevel(value, level);
};
