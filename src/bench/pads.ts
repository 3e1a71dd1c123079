// The scrap board of reply pads beside the simulated board: the resistors that the plan for this profile and meter
// proposes, each off by its own tolerance. On the bench a pad is one more place, after the last pin.

import { inferResolution } from '../core/measure/accuracy-row.js';
import type { Driver } from '../core/meter/driver-format.js';
import { type Pad, type PadCommand, padCommands } from '../core/pads/pad.js';
import { type PadMeasure, planPads } from '../core/pads/plan-pads.js';
import { touchUncertainty } from '../core/pads/touch-uncertainty.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../core/reading.js';
import { driverAccuracy } from '../core/walk/open-session.js';
import { displayRanges } from './display.js';
import { diodeTestAmps } from './line-path.js';
import type { MeterError } from './meter.js';
import { seeded } from './seeded.js';

export interface BenchPad {
  readonly command: PadCommand;
  readonly ohms: number;
}

/** A resistor of a usual series lies within so much of its value; most lie well inside. */
const off = 0.006;

/** @throws RangeError with the reason where this profile and meter take no pads. */
export const benchPads = (
  profile: Profile,
  driver: Driver,
  measure: { readonly function: MeasureFunction; readonly polarity: Polarity },
  seed: number,
): readonly BenchPad[] => {
  const overloadVolts = displayRanges(driver, measure.function).at(-1)?.fullScale ?? 1;
  const asked: PadMeasure =
    measure.function === 'diode'
      ? { ...measure, diode: { testAmps: diodeTestAmps, overloadVolts } }
      : measure;
  const accuracy = driverAccuracy(driver, measure.function);
  const all = planPads(profile, asked, accuracy, padCommands);
  const plan =
    all.planned || all.fits === 0
      ? all
      : planPads(profile, asked, accuracy, padCommands.slice(0, all.fits));
  if (!plan.planned) throw new RangeError(`reply pads: ${plan.reason}`);
  const random = seeded(seed, 'pads');
  return plan.pads.map(({ command, ohms }) => ({
    command,
    ohms: ohms * (1 + random.between(-off, off)),
  }));
};

/** What a pad reads without the meter's error: ohm, volt, or nothing. */
export const padReads = ({ ohms }: BenchPad, measure: MeasureFunction): number =>
  measure === 'dc-volts' ? 0 : measure === 'diode' ? ohms * diodeTestAmps : ohms;

/** The bench's pads as its own meter reads them: what learning them would come to. */
export const learnedFrom = (
  pads: readonly BenchPad[],
  meter: {
    readonly driver: Driver;
    readonly measure: { readonly function: MeasureFunction };
    readonly error: MeterError;
  },
): readonly Pad[] => {
  const { driver, error, measure } = meter;
  const accuracy = driverAccuracy(driver, measure.function);
  return pads.map((pad) => {
    const own = padReads(pad, measure.function);
    const value =
      measure.function === 'diode' ? own + error.diodeOffsetV : own * error.scale + error.leadOhms;
    const step = inferResolution(accuracy, measure.function, value, undefined);
    return {
      command: pad.command,
      value: Number(value.toPrecision(6)),
      standardUncertainty: Number(touchUncertainty(value, step, measure.function).toPrecision(3)),
    };
  });
};
