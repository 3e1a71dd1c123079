// Puts a bench together from its name, a driver and a profile. Everything that can be asked for is checked
// here, before anything runs.
import type { Act } from '../core/inputs.js';
import type { Driver } from '../core/meter/driver-format.js';
import { walkedPins } from '../core/profile/plan.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../core/reading.js';
import { usualRanging } from './autorange.js';
import type { BenchName, PaceName } from './bench-name.js';
import { displayRanges, withCounts } from './display.js';
import { checkFaults } from './faults.js';
import { usualError } from './meter.js';
import { atSpeed, easyPace, type Pace, steadyPace, usualPace } from './pace.js';
import { benchPads } from './pads.js';
import { type Scenario, scenarioOf } from './scenarios.js';
import { twoBoards } from './two-boards.js';
import type { VirtualMeterSetup } from './virtual-meter.js';

export interface BenchParts {
  readonly bench: BenchName;
  readonly driver: Driver;
  readonly profile: Profile;
  /** The only pins the technician walks; absent: all. */
  readonly pins?: readonly string[] | undefined;
  /** What the walk measures; absent: what the profile says. */
  readonly measure?: { readonly function: MeasureFunction; readonly polarity: Polarity };
  /** Does the technician hear the program? Only in the same process. */
  readonly hears: boolean;
  /** Takes the technician's key presses; absent where only probes reach the program. */
  readonly act?: (act: Act) => void;
}

const paces: Readonly<Record<PaceName, Pace>> = {
  easy: easyPace,
  usual: usualPace,
  steady: steadyPace,
};

/** @throws RangeError when scenario, driver and profile do not go together; the message says why. */
export const benchSetup = (parts: BenchParts): VirtualMeterSetup => {
  const { bench, profile, act } = parts;
  const scenario: Scenario = scenarioOf(bench.scenario);
  const driver = bench.counts === undefined ? parts.driver : withCounts(parts.driver, bench.counts);
  const measure = parts.measure ?? profile.measure;
  const work = scenario.work ?? 'walk';
  const faults = scenario.faults(profile);
  checkFaults(profile, faults);
  const walked = walkedPins(profile, parts.pins);
  const onBench = { ...profile, connector: { ...profile.connector, pins: walked } };
  displayRanges(driver, measure.function);
  if (driver.talk.style !== 'scpi' && driver.speak === undefined)
    throw new RangeError(
      `driver ${driver.id} does not say how its meter speaks; add "speak" to it`,
    );
  return {
    driver,
    profile: bench.donor ? twoBoards(onBench, measure.function, bench.seed) : onBench,
    measure,
    faults: faults.filter(
      (fault) => !('pin' in fault) || walked.some(({ pin }) => pin === fault.pin),
    ),
    troubles: scenario.troubles ?? [],
    seed: bench.seed,
    pace: atSpeed(paces[bench.pace], bench.speed),
    hears: parts.hears ? bench.answers : null,
    pads:
      bench.answers === 'pads' || work === 'touch-pads'
        ? benchPads(profile, driver, measure, bench.seed)
        : [],
    doubts: scenario.doubts?.(profile) ?? [],
    work,
    probes: bench.probes === 'proposed',
    readingsPerS: bench.rate ?? driver.readingsPerS,
    error: { ...usualError, ...scenario.error },
    ranging: usualRanging,
    range: null,
    autoOffS: null,
    ...(act === undefined ? {} : { act }),
  };
};
