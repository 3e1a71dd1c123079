// Which pins are walked again after rework, and why: bad lines and their mates, everything through reworked parts
// and near heat, every supply, a few lines nobody touched, and grounds on the way as anchors.

import type { Plan, PlannedPin } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { Place } from '../rework/heat-limits.js';
import type { ReworkState } from '../rework/rework-state.js';
import type { PinRecord } from '../walk/state.js';
import type { RecheckReason } from './recheck-events.js';

export interface ChosenPin {
  readonly planned: PlannedPin;
  readonly record: PinRecord;
  readonly because: readonly RecheckReason[];
}

export interface Walked {
  readonly profile: Profile;
  readonly plan: Plan;
  readonly pins: readonly PinRecord[];
}

/** Untouched lines that must read as before. */
const controls = 3;

export const chooseRecheckPins = (walked: Walked, rework: ReworkState): readonly ChosenPin[] => {
  const { profile, plan, pins } = walked;
  const because = new Map<number, RecheckReason[]>();
  const give = (index: number, reason: RecheckReason): void => {
    const known = because.get(index) ?? [];
    if (!known.includes(reason)) because.set(index, [...known, reason]);
  };
  const giveLines = (lines: ReadonlySet<string>, reason: RecheckReason): void => {
    for (const { index, line, kind } of plan.pins) {
      if (kind !== 'ground' && lines.has(line)) give(index, reason);
    }
  };
  const suspectPins = plan.pins.filter(({ index }) => isInQuestion(pins[index]));
  for (const { index } of suspectPins) give(index, 'bad');
  const badLines = new Set(suspectPins.map(({ line }) => line));
  giveLines(badLines, 'bad');
  giveLines(new Set([...badLines].flatMap((line) => profile.lines[line]?.mate ?? [])), 'mate');
  const worked = workedPlaces(rework);
  giveLines(linesThrough(profile, partsAt(profile, worked, false)), 'part');
  giveLines(linesThrough(profile, partsAt(profile, worked, true)), 'heat');
  for (const { index, kind } of plan.pins) if (kind === 'supply') give(index, 'supply');
  for (const index of chooseControls(walked, because)) give(index, 'control');
  for (const index of chooseAnchors(walked, because)) give(index, 'anchor');
  return plan.pins.flatMap((planned) => {
    const reasons = because.get(planned.index);
    const record = pins[planned.index];
    return reasons === undefined || record === undefined
      ? []
      : [{ planned, record, because: reasons }];
  });
};

const isInQuestion = (record: PinRecord | undefined): boolean =>
  record !== undefined && record.verdict !== 'normal' && record.verdict !== 'unread';

const workedPlaces = ({ logged, runs }: ReworkState): readonly Place[] => [
  ...logged.filter(({ action }) => action !== 'inspect'),
  ...runs.map(({ place }) => place),
];

/** The parts worked on; with `around`, all parts of the areas they lie in as well. */
const partsAt = (
  profile: Profile,
  places: readonly Place[],
  around: boolean,
): ReadonlySet<string> => {
  const parts = new Set(places.flatMap(({ part }) => part ?? []));
  const named = new Set(places.flatMap(({ area }) => area ?? []));
  const near = Object.entries(profile.areas ?? {}).flatMap(([area, { parts: inside }]) =>
    named.has(area) || (around && inside.some((part) => parts.has(part))) ? inside : [],
  );
  return new Set([...parts, ...near]);
};

const linesThrough = (profile: Profile, parts: ReadonlySet<string>): ReadonlySet<string> =>
  new Set([
    ...[...parts].flatMap((part) =>
      Object.hasOwn(profile.parts ?? {}, part) ? (profile.parts?.[part]?.lines ?? []) : [],
    ),
    ...Object.entries(profile.lines).flatMap(([line, { chain = [] }]) =>
      chain.some(
        (stop) =>
          ('part' in stop && parts.has(stop.part)) ||
          ('shunt' in stop && parts.has(stop.shunt.part)),
      )
        ? [line]
        : [],
    ),
  ]);

/**
 * Signal lines that read a good number and that nothing else asks for. Where a short walk leaves too few of them,
 * lines that heat came near to but no work was done on: if heat moved them, that is to be waited out too.
 */
const chooseControls = (
  { plan, pins }: Walked,
  taken: ReadonlyMap<number, readonly RecheckReason[]>,
): readonly number[] => {
  const good = plan.pins.filter(
    ({ index, kind }) =>
      kind === 'signal' && pins[index]?.verdict === 'normal' && pins[index]?.value !== null,
  );
  const free = spread(
    good.filter(({ index }) => !taken.has(index)),
    controls,
  );
  const near = good.filter(({ index }) => taken.get(index)?.every(isBystander) === true);
  return [...free, ...spread(near, controls - free.length)];
};

const isBystander = (reason: RecheckReason): boolean => reason === 'heat' || reason === 'mate';

/** So many of them at most, evenly over the connector. */
const spread = (pins: readonly PlannedPin[], most: number): readonly number[] => {
  const wanted = Math.min(most, pins.length);
  return Array.from(
    { length: wanted },
    (_, nth) => pins[Math.floor(((nth + 0.5) * pins.length) / wanted)]?.index ?? -1,
  );
};

/** The good ground before each run of pins that follow one another, or the one after it. */
const chooseAnchors = (
  { plan, pins }: Walked,
  taken: ReadonlyMap<number, unknown>,
): readonly number[] => {
  const isAnchor = (index: number): boolean =>
    plan.pins[index]?.kind === 'ground' && pins[index]?.verdict === 'normal';
  const count = plan.pins.length;
  return plan.pins.flatMap(({ index }) => {
    if (!taken.has(index) || taken.has(index - 1)) return [];
    for (let at = index - 1; at >= 0 && !taken.has(at); at -= 1) if (isAnchor(at)) return [at];
    for (let at = index + 1; at < count; at += 1) if (isAnchor(at)) return [at];
    return [];
  });
};
