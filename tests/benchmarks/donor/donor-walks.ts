// Walks on the virtual bench, of one board and of two in turns, with and without expected values, by hands that hear
// the program and by hands that do not. What the walk tells is held against where the probe was.
import type { Driver } from '../../../src/core/meter/driver-format.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { type LiveWalk, misnamed, walkOnBench } from '../../bench/support/live-walk.js';

export interface DonorWalks {
  /** Two boards in turns, or one. */
  readonly beside: boolean;
  /** Does the profile know what the lines should read? */
  readonly known: boolean;
  readonly hears: boolean;
  readonly rate: number;
  readonly walks: number;
}

export interface DonorTally {
  walks: number;
  unfinished: number;
  /** Readings told under a pin's name. */
  told: number;
  /** Of those, under another pin's or board's name than the one under the probe. */
  misnamed: number;
  /** Of those, still so at the end of the walk. */
  leftWrong: number;
  /** Questions about the place. */
  questions: number;
  renamed: number;
  seconds: number;
}

/** The same connector with nothing known of its lines but which are ground and which are supplies. */
export const blankOf = (profile: Profile): Profile => ({
  ...profile,
  lines: Object.fromEntries(
    Object.entries(profile.lines).map(([name, { expect: _, ...line }]) => [name, line]),
  ),
});

export const besideOnBench = (
  profile: Profile,
  driver: Driver,
  { beside, known, hears, rate }: Omit<DonorWalks, 'walks'>,
  seed: number,
): LiveWalk =>
  walkOnBench({
    driver,
    profile: known ? profile : blankOf(profile),
    hears,
    patienceS: 900,
    bench: { seed, rate, scenario: 'demo', pace: 'usual', donor: beside },
    ...(beside ? { opening: { donor: 'beside' } } : {}),
  });

export const tallyDonor = (profile: Profile, driver: Driver, asked: DonorWalks): DonorTally => {
  const tally: DonorTally = {
    walks: 0,
    unfinished: 0,
    told: 0,
    misnamed: 0,
    leftWrong: 0,
    questions: 0,
    renamed: 0,
    seconds: 0,
  };
  for (let seed = 1; seed <= asked.walks; seed += 1) {
    const walk = besideOnBench(profile, driver, asked, seed);
    const settled = walk.events.flatMap((event) =>
      event.type === 'pin-settled' && event.overload !== true ? [event] : [],
    );
    const last = new Map(settled.map((event) => [event.pin, event]));
    tally.walks += 1;
    tally.unfinished += walk.finished ? 0 : 1;
    tally.told += settled.length;
    tally.misnamed += misnamed(walk).length;
    tally.leftWrong += [...last].filter(([pin, { to }]) => walk.link.pinAt(to) !== pin).length;
    tally.seconds += walk.tookS;
    for (const event of walk.events) {
      if (event.type === 'walk-realigned') tally.renamed += 1;
      if (event.type === 'question-asked' && event.question !== 'open') tally.questions += 1;
    }
  }
  return tally;
};
