// What the donor read at a pin is expected of the patient there: this meter, this minute, and the tolerance the line
// has anyway. A donor that is not normal itself is no measure, and the profile's own expectation stays.
import { usualTolerance } from '../learn/usual-tolerance.js';
import { offBoard } from '../profile/donor.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { PinRecord } from './state.js';

/** No limits are tighter than this, however exact the meter: two boards, two contacts (design decision). */
const leastTolerance = 0.02;

interface Walked {
  readonly profile: Profile;
  readonly plan: Plan;
  readonly pins: readonly PinRecord[];
}

/** The walk with the patient's pin expecting what the donor's pin, at `index`, is known to read. */
export const expectDonor = <State extends Walked>(state: State, index: number): State => {
  const donor = state.plan.pins[index];
  const patient = state.plan.pins[index + 1];
  const record = state.pins[index];
  if (donor?.board !== 'donor' || patient === undefined || record === undefined) return state;
  const { fromDonor: _, ...own } = patient;
  const expecting = { ...own, expected: donor.expected, ...readByDonor(donor, record, state) };
  const plan = { ...state.plan, pins: state.plan.pins.with(index + 1, expecting) };
  const unread = state.pins[index + 1];
  return unread?.verdict !== 'unread'
    ? { ...state, plan }
    : {
        ...state,
        plan,
        pins: state.pins.with(index + 1, { ...unread, expected: expecting.expected }),
      };
};

const readByDonor = (
  donor: PlannedPin,
  { verdict, value, overload, standardUncertainty }: PinRecord,
  { profile, plan }: Walked,
): Pick<PlannedPin, 'expected' | 'fromDonor'> | Record<string, never> => {
  if (donor.kind === 'ground') return {};
  const isKnown = donor.expected !== null;
  if (isKnown ? verdict !== 'normal' : verdict === 'unread' || verdict === 'wobble') return {};
  const fromDonor = {
    standardUncertainty: standardUncertainty ?? 0,
    ...(isKnown ? {} : ({ alone: true } as const)),
  };
  if (overload) return { expected: 'overload', fromDonor };
  if (value === null) return {};
  // Next to nothing: the patient may read as little as it likes.
  if (value <= donor.shortLimit && !isKnown) {
    return { expected: { nominal: value, low: 0, high: donor.shortLimit }, fromDonor };
  }
  const { name: line } = offBoard(donor.line);
  const tolerance = Math.max(leastTolerance, usualTolerance(profile, line, plan.function));
  const expected = {
    nominal: value,
    low: value * (1 - tolerance),
    high: value * (1 + tolerance),
  };
  return { expected, fromDonor };
};
