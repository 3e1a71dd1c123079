// What the line shows before the first press: its rest, and where the profile knows no normal, what the
// press test takes for it. Refuses to learn from a line that does not hold still.
import { median } from '../numbers/median.js';
import type { Reading } from '../reading.js';
import type { CueWindow } from './cue-window.js';
import type { PressSetup } from './press-setup.js';
import { runsOf, withoutBounces } from './runs.js';
import { type Band, type Seen, seeReading } from './sides.js';

/** Rest is judged on the last moments before the press only: earlier the probe may not have been there. */
const restS = 2;
const leastReadings = 3;
/** How far a line that holds still may wander about its median. Common practice, no source. */
const bandShare = 0.1;
const steadyShare = 0.8;

/** The line's normal as it reads at rest; null where it is open, shorted, charging or restless. */
export const restBand = (setup: PressSetup, readings: readonly Reading[]): Band | null => {
  if (setup.charges === true) return null;
  const seen = readings.flatMap((reading) => seeReading(setup, null, reading) ?? []);
  const recent = seen.filter(({ t }) => t >= (seen.at(-1)?.t ?? 0) - restS);
  const values = recent.flatMap(({ side, value }) =>
    side === 'normal' && value !== null ? [value] : [],
  );
  if (values.length < leastReadings) return null;
  const middle = median(values);
  const band = { low: middle * (1 - bandShare), high: middle * (1 + bandShare) };
  const within = values.filter((value) => value >= band.low && value <= band.high);
  return within.length >= steadyShare * recent.length ? band : null;
};

/** The time before the first press as a release window that no cue began; null where nothing was read. */
export const restWindow = (
  seen: readonly Seen[],
  pressT: number,
  updateS: number,
): CueWindow | null => {
  const recent = seen.filter(({ t }) => t >= pressT - restS);
  const runs = withoutBounces(runsOf(recent), updateS);
  const last = runs.at(-1);
  if (last === undefined) return null;
  const values = last.own.flatMap(({ value }) => (value === null ? [] : [value]));
  const isClear = runs.length === 1;
  return {
    cue: 'release',
    fromS: last.from,
    toS: pressT,
    side: isClear ? last.side : null,
    overload: isClear && values.length === 0,
    value: isClear && values.length > 0 ? median(values) : null,
    answerS: null,
    locked: false,
  };
};
