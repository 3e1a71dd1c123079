// The first event of a walk: what was walked, with what, and how exact the meter is taken to be.
import type { EventOf } from '../events.js';
import type { Driver } from '../meter/driver-format.js';
import type { Pad } from '../pads/pad.js';
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';
import { sessionFormat } from '../session-events.js';
import { programVersion } from '../version.js';

/** What the user states of the meter: ±(percent of reading + counts), and the display's full scale. */
export interface StatedAccuracy {
  readonly percent: number;
  readonly counts: number;
  readonly fullScaleCounts: number;
}

/** A plain hand-held meter, where nothing is known: 0.5 % + 3 counts of 6,000 (design decision). */
export const assumedAccuracy: AccuracyStatement = {
  from: 'assumed',
  fullScaleCounts: 6000,
  rows: [{ fullScale: null, resolution: null, percent: 0.5, counts: 3 }],
};

export const statedAccuracy = ({
  percent,
  counts,
  fullScaleCounts,
}: StatedAccuracy): AccuracyStatement => ({
  from: 'option',
  fullScaleCounts,
  rows: [{ fullScale: null, resolution: null, percent, counts }],
});

export const driverAccuracy = (driver: Driver, measure: MeasureFunction): AccuracyStatement => {
  const rows = driver.accuracy
    .filter((row) => row.function === measure)
    .map(({ fullScale, resolution, percent, counts }) => ({
      fullScale,
      resolution,
      percent,
      counts,
    }));
  return rows.length === 0
    ? { ...assumedAccuracy, fullScaleCounts: driver.displayCounts }
    : { from: 'driver', fullScaleCounts: driver.displayCounts, rows };
};

export interface SessionPlan {
  readonly profile: { readonly content: Profile; readonly sha256: string };
  readonly driver: { readonly id: string; readonly sha256: string } | null;
  readonly accuracy: AccuracyStatement;
  readonly measure: Profile['measure'];
  readonly link: string;
  readonly simulated: boolean;
  readonly groundCheck: boolean;
  readonly ready?: EventOf<'session-opened'>['ready'];
  readonly reference?: EventOf<'session-opened'>['reference'];
  readonly seed?: number;
  readonly pressTests?: 'asked' | 'each';
  readonly pins?: readonly string[];
  readonly donor?: EventOf<'session-opened'>['donor'];
  readonly recheck?: EventOf<'session-opened'>['recheck'];
  readonly pressAlone?: EventOf<'session-opened'>['pressAlone'];
  readonly pads?: readonly Pad[];
  readonly wallTime: string | null;
  readonly zone: string | null;
}

export const openSession = (plan: SessionPlan): EventOf<'session-opened'> => ({
  type: 'session-opened',
  t: 0,
  format: sessionFormat,
  program: programVersion,
  wallTime: plan.wallTime,
  zone: plan.zone,
  link: plan.link,
  simulated: plan.simulated,
  profile: {
    id: plan.profile.content.id,
    sha256: plan.profile.sha256,
    content: plan.profile.content,
  },
  driver: plan.driver,
  measure: { function: plan.measure.function, polarity: plan.measure.polarity },
  accuracy: plan.accuracy,
  groundCheck: plan.groundCheck,
  ...(plan.ready === undefined ? {} : { ready: plan.ready }),
  ...(plan.reference === undefined ? {} : { reference: plan.reference }),
  ...(plan.seed === undefined ? {} : { seed: plan.seed }),
  ...(plan.pins === undefined ? {} : { pins: [...plan.pins] }),
  ...(plan.donor === undefined ? {} : { donor: plan.donor }),
  ...(plan.recheck === undefined ? {} : { recheck: plan.recheck }),
  ...(plan.pressTests === undefined ? {} : { pressTests: plan.pressTests }),
  ...(plan.pressAlone === undefined ? {} : { pressAlone: plan.pressAlone }),
  ...(plan.pads === undefined ? {} : { pads: [...plan.pads] }),
});

/** The opening of a plain reading log: no ready stage, no wall time, so that the same log gives the same events. */
export const openLog = (
  profile: SessionPlan['profile'],
  driver: SessionPlan['driver'],
  accuracy: AccuracyStatement,
  link: string,
): EventOf<'session-opened'> =>
  openSession({
    profile,
    driver,
    accuracy,
    measure: profile.content.measure,
    link,
    simulated: false,
    groundCheck: false,
    wallTime: null,
    zone: null,
  });
