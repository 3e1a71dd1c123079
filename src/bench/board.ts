// A simulated board under one probe: what the touched pin reads at each moment, with the creep of its
// capacitance, charging rails, charge left from before, and faults that answer to pressure. Time is passed in
// and never goes back; the same seed gives the same board.
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction } from '../core/reading.js';
import { checkFaults, type Fault } from './faults.js';
import { healthyReading } from './healthy.js';
import { type Along, ohmsTestAmps, steadyReading } from './line-path.js';
import { type BenchPad, padReads } from './pads.js';
import { type Seeded, seeded } from './seeded.js';

export interface BoardSetup {
  readonly profile: Profile;
  readonly faults: readonly Fault[];
  readonly seed: number;
  /** Places after the last pin: the reply pads on their scrap board. */
  readonly pads?: readonly BenchPad[];
}

/** What the hands do to the board. */
export interface Probing {
  /**
   * Place in the profile's order of the touched pin, or of the pin whose line is touched; a pad's place after
   * that; or null in the air.
   */
  readonly pinIndex: number | null;
  /** The place along that pin's line, where it is not the pin itself. */
  readonly along?: Along | null;
  /** The part being pressed. */
  readonly pressed: string | null;
  /** What both tips hold beside the board, in the function's unit: 0 where they hold one another. */
  readonly loose?: number | null;
}

export interface Board {
  /** Carries charges on to `worldS`, under what the hands have done since the last call. */
  advanceTo(worldS: number, probing: Probing): void;
  /** Ohm or volt right now; null where no path is. */
  reads(probing: Probing, measure: MeasureFunction): number | null;
  /** What the pin reads at rest once settled; null where no path is. */
  steady(pinIndex: number, measure: MeasureFunction): number | null;
  /** Seconds of contact after which the pin is within 0.5 % of `steady`. */
  settlesInS(pinIndex: number): number;
  /** The technician's resistor across the line: charge left from before is gone. */
  discharge(pinIndex: number): void;
}

interface Creeping {
  /** First reading of an uncharged line as a fraction of the settled one, minus 1. */
  readonly amplitude: number;
  readonly tauS: number;
  /** 0 uncharged, 1 as charged as the meter makes it; true at `atS`. */
  charge: number;
  /** Volts left on the line from before. */
  leftVolts: number;
  atS: number;
}

/** Seconds in which a touching meter drains charge left from before. */
const drainTauS = 6;

/** @throws RangeError when a fault names what the profile does not have. */
export const createBoard = ({ profile, faults, seed, pads = [] }: BoardSetup): Board => {
  checkFaults(profile, faults);
  const pins = profile.connector.pins;
  const names = Object.keys(profile.lines);
  const creeps = new Map(names.map((line) => [line, uncharged(profile, line, faults, seed)]));
  const releasedS = new Map<string, number>();
  let nowS = 0;

  const sound = new Map<string, number | null>();
  const healthy = (line: string, measure: MeasureFunction): number | null => {
    const key = `${measure} ${line}`;
    const known = sound.get(key);
    if (known !== undefined) return known;
    const reading = healthyReading(profile, line, measure, seed);
    sound.set(key, reading);
    return reading;
  };

  const padOf = (pinIndex: number): BenchPad | undefined => pads[pinIndex - pins.length];

  const lineOf = (pinIndex: number): string => {
    const at = pins[pinIndex];
    if (at === undefined) throw new RangeError(`${profile.id} has no place ${pinIndex} in order`);
    return at.line;
  };

  const closes = (fault: Fault, pressed: string | null): boolean => {
    if (!('part' in fault)) return false;
    if (fault.part === pressed) return true;
    const since = nowS - (releasedS.get(fault.part) ?? Number.NEGATIVE_INFINITY);
    return fault.kind === 'loose' && since < (fault.stickyS ?? 0);
  };

  const path = (
    pinIndex: number,
    measure: MeasureFunction,
    pressed: string | null,
    along: Along | null = null,
  ) => {
    const line = lineOf(pinIndex);
    return steadyReading({
      profile,
      measure,
      line,
      pin: pins[pinIndex]?.pin ?? '',
      along,
      healthy: healthy(line, measure),
      faults,
      feels: (fault) => closes(fault, pressed),
    });
  };

  /** A line that reads lower than it should empties and fills its capacitance faster. */
  const tauOf = (pinIndex: number, reading: number): number => {
    const line = lineOf(pinIndex);
    const whole = healthy(line, 'resistance');
    if (whole === null || whole === 0) return 0;
    return (creeps.get(line)?.tauS ?? 0) * Math.max(0, Math.min(2, reading / whole));
  };

  return {
    advanceTo: (worldS, { pinIndex, pressed, along }) => {
      const elapsedS = worldS - nowS;
      if (elapsedS <= 0) return;
      nowS = worldS;
      if (pressed !== null) releasedS.set(pressed, worldS);
      if (pinIndex === null || padOf(pinIndex) !== undefined) return;
      const creep = creeps.get(lineOf(pinIndex));
      const ohms = path(pinIndex, 'resistance', pressed, along);
      if (creep === undefined || ohms === null) return;
      creep.charge *= decay(worldS - elapsedS - creep.atS, creep.tauS);
      creep.charge = 1 - (1 - creep.charge) * decay(elapsedS, tauOf(pinIndex, ohms));
      creep.leftVolts *= decay(elapsedS, drainTauS);
      creep.atS = worldS;
    },

    reads: ({ pinIndex, pressed, along, loose }, measure) => {
      if (loose != null) return loose;
      if (pinIndex === null) return measure === 'dc-volts' ? 0 : null;
      const pad = padOf(pinIndex);
      if (pad !== undefined) return padReads(pad, measure);
      const settled = path(pinIndex, measure, pressed, along);
      const creep = creeps.get(lineOf(pinIndex));
      if (settled === null || creep === undefined) return settled;
      if (measure === 'dc-volts') return creep.leftVolts;
      const charge = creep.charge * decay(nowS - creep.atS, creep.tauS);
      const left = measure === 'diode' ? creep.leftVolts : creep.leftVolts / ohmsTestAmps;
      return settled * (1 + creep.amplitude * (1 - charge)) + left;
    },

    steady: (pinIndex, measure) => path(pinIndex, measure, null),

    settlesInS: (pinIndex) => {
      const ohms = path(pinIndex, 'resistance', null);
      const amplitude = creeps.get(lineOf(pinIndex))?.amplitude ?? 0;
      if (ohms === null || amplitude === 0) return 0;
      return tauOf(pinIndex, ohms) * Math.max(0, Math.log(Math.abs(amplitude) / 0.005));
    },

    discharge: (pinIndex) => {
      const creep = creeps.get(lineOf(pinIndex));
      if (creep !== undefined) creep.leftVolts = 0;
    },
  };
};

const decay = (elapsedS: number, tauS: number): number =>
  tauS > 0 ? Math.exp(-elapsedS / tauS) : 0;

/** Time constants and sizes of creep by kind of line. Common practice, no source. */
const uncharged = (
  profile: Profile,
  lineName: string,
  faults: readonly Fault[],
  seed: number,
): Creeping => {
  const line = profile.lines[lineName];
  const random: Seeded = seeded(seed, `creep:${lineName}`);
  const leftVolts = faults.reduce(
    (sum, fault) => (fault.kind === 'charged' && fault.line === lineName ? sum + fault.volts : sum),
    0,
  );
  const start = { charge: 0, leftVolts, atS: 0 };
  if (line?.kind === 'ground') return { amplitude: 0, tauS: 0, ...start };
  if (line?.charges ?? line?.kind === 'supply')
    return { amplitude: -0.97, tauS: random.between(0.35, 1), ...start };
  const tauS = 0.02 * 30 ** random.fraction();
  return { amplitude: random.between(-0.7, 0.4), tauS, ...start };
};
