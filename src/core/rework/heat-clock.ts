// Running heat against its limits: how long it has been on, how long each area has had in all, and when next to
// say so. A cue comes before a limit is met, at it, and then again and again until heat is off.
import type { EventOf } from '../events.js';
import type { HeatLimits } from '../profile/heat-limits-format.js';
import type { Profile } from '../profile/profile-format.js';
import { type Heated, heatedAreas, isHeatedBy, type Place } from './heat-limits.js';
import type { ReworkState } from './rework-state.js';

export interface HeatClock extends Heated {
  /** Seconds of this run and of all heat there, this run included. */
  readonly run: number;
  readonly total: number;
}

/** One clock for each area that heat on the place counts for; `t` is the moment asked about. */
export const heatClocks = (
  state: ReworkState,
  profile: Profile,
  shop: HeatLimits,
  place: Place,
  t: number,
): readonly HeatClock[] => {
  const { heat, runs } = state;
  return heatedAreas(profile, shop, place).map((heated) => {
    const counts = (other: Place): boolean => isHeatedBy(profile, heated, place, other);
    const run = heat !== null && counts(heat) ? Math.max(0, t - heat.t) : 0;
    const earlier = runs.filter((done) => counts(done.place));
    return { ...heated, run, total: earlier.reduce((sum, { seconds }) => sum + seconds, run) };
  });
};

/** How long before a limit the cue comes, seconds: time to answer it, and no more than a quarter of the limit. */
const headStartS = (allowed: number): number => Math.min(5, allowed / 4);
/** Past a limit it is said again every so many seconds. */
const againS = 5;

/** The next time a limit must be told, with what is to be told, while heat is on; null where there is no limit. */
export const nextLimit = (
  state: ReworkState,
  profile: Profile,
  shop: HeatLimits,
): EventOf<'heat-limit-met'> | null => {
  const { heat } = state;
  if (heat === null) return null;
  const { part, area } = heat;
  const place = { part, area };
  const due = heatClocks(state, profile, shop, place, heat.t).flatMap((clock) =>
    (['run', 'total'] as const).flatMap((limit): EventOf<'heat-limit-met'>[] => {
      const allowed = clock.limits[limit];
      if (allowed === undefined) return [];
      const of = clock.area ?? undefined;
      const told = state.told.filter((met) => met.limit === limit && met.of === of);
      const at = nextMark(allowed, clock[limit], told);
      return [
        {
          type: 'heat-limit-met',
          t: heat.t + at - clock[limit],
          ...(part === undefined ? {} : { part }),
          ...(area === undefined ? {} : { area }),
          ...(of === undefined ? {} : { of }),
          limit,
          stage: at < allowed ? 'near' : 'passed',
          seconds: at,
          allowed,
        },
      ];
    }),
  );
  return due.sort((a, b) => a.t - b.t)[0] ?? null;
};

/** The seconds of heat at which the next word is due, where `already` had passed before this run. */
const nextMark = (
  allowed: number,
  already: number,
  told: readonly EventOf<'heat-limit-met'>[],
): number => {
  const last = told.at(-1);
  if (last?.stage === 'passed') return last.seconds + againS;
  const near = allowed - headStartS(allowed);
  return Math.max(last === undefined ? near : allowed, already);
};
