// Board, technician and probes in one timeline. Whoever measures says how far time has come and gets what the
// probe read on the way; hands move at their exact moments in between. Time never goes back.
import type { Numbered } from '../core/events.js';
import type { Act } from '../core/inputs.js';
import { planWalk } from '../core/profile/plan.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../core/reading.js';
import { listenAndWalk } from './attentive.js';
import type { AnswerWay } from './bench-name.js';
import { type Board, createBoard } from './board.js';
import { createBody } from './body.js';
import { walkByPatience } from './deaf.js';
import type { Fault } from './faults.js';
import type { MeterError, Samples } from './meter.js';
import type { Pace } from './pace.js';
import { touchPadsInTurn } from './pad-hands.js';
import type { BenchPad } from './pads.js';
import { seeded } from './seeded.js';

/** What the technician is at: walking the board, or touching each reply pad so that it is learned. */
export type BenchWork = 'walk' | 'touch-pads';

export interface WorldSetup {
  readonly profile: Profile;
  readonly measure: { readonly function: MeasureFunction; readonly polarity: Polarity };
  readonly faults: readonly Fault[];
  readonly seed: number;
  readonly pace: Pace;
  /** How the technician says "open"; null for one who does not hear the program at all. */
  readonly hears: AnswerWay | null;
  /** Reply pads beside the board; none where the technician has no use for them. */
  readonly pads: readonly BenchPad[];
  readonly doubts: readonly string[];
  readonly work: BenchWork;
  /** Does the technician, once all is walked, probe what the program proposes? */
  readonly probes: boolean;
  readonly readingsPerS: number;
  /** Highest full scale of the meter: what reads over it looks open. */
  readonly highest: number;
  readonly error: MeterError;
  /** Does the display show a number just now? */
  readonly showsValue: () => boolean;
  readonly resetMeter: () => void;
  readonly act?: (act: Act) => void;
}

export interface World {
  readonly nowS: number;
  readonly board: Board;
  /** Lets time pass to `toS` and returns what the probe read, at evenly spaced moments. */
  sample(toS: number, measure: MeasureFunction): Samples;
  /** Lets time pass unmeasured. */
  advanceTo(toS: number): void;
  /** Place in the profile's order of the pin under the probe, or null. */
  touched(): number | null;
  press(part: string | null): void;
  hear(event: Numbered): void;
}

/** The probe is looked at at least this often: shorter than most bounces and every slip. */
const lookEveryS = 0.005;

/** @throws RangeError when a fault or a habit does not fit. */
export const createWorld = (setup: WorldSetup): World => {
  const { profile, measure } = setup;
  const board = createBoard(setup);
  const plan = planWalk(profile, measure);
  let nowS = 0;

  const shown = (place: number): number | null => {
    const steady = board.steady(place, measure.function);
    if (steady === null) return null;
    const value =
      measure.function === 'diode'
        ? steady + setup.error.diodeOffsetV
        : steady * setup.error.scale + setup.error.leadOhms;
    return value > setup.highest ? null : value;
  };

  const isNormal = (place: number): boolean => {
    const pin = plan.pins[place];
    const value = shown(place);
    if (pin === undefined || pin.expected === 'overload') return value === null;
    if (value === null) return false;
    if (pin.expected === null) return value > pin.shortLimit;
    return value >= pin.expected.low && value <= pin.expected.high;
  };

  const technician = createBody(
    {
      profile,
      pace: setup.pace,
      random: seeded(setup.seed, 'technician'),
      readingsPerS: setup.readingsPerS,
      pads: setup.pads,
      doubts: setup.doubts,
      reach: {
        showsValue: setup.showsValue,
        discharge: (place) => board.discharge(place),
        resetMeter: setup.resetMeter,
        ...(setup.act === undefined ? {} : { act: setup.act }),
      },
    },
    (hands) => {
      if (setup.work === 'touch-pads') return touchPadsInTurn(hands);
      return setup.hears === null
        ? walkByPatience(hands, { board, isNormal, reads: (place) => shown(place) !== null })
        : listenAndWalk(hands, setup.hears, setup.probes);
    },
  );

  const { body } = technician;

  const advanceTo = (toS: number): void => {
    for (let due = technician.nextS(); due <= toS; due = technician.nextS()) {
      const atS = Math.max(nowS, due);
      board.advanceTo(atS, body.probing);
      technician.advanceTo(atS);
      nowS = atS;
    }
    board.advanceTo(toS, body.probing);
    technician.advanceTo(toS);
    nowS = Math.max(nowS, toS);
  };

  return {
    get nowS() {
      return nowS;
    },
    board,
    advanceTo,
    sample: (toS, asked) => {
      const fromS = nowS;
      const looks = Math.max(4, Math.ceil((toS - fromS) / lookEveryS));
      return Array.from({ length: looks }, (_, look) => {
        advanceTo(fromS + ((toS - fromS) * (look + 1)) / looks);
        return board.reads(body.probing, asked);
      });
    },
    touched: () => (body.probing.along == null ? body.probing.pinIndex : null),
    press: (part) => {
      body.probing = { ...body.probing, pressed: part };
    },
    hear: (event) => technician.hear(event),
  };
};
