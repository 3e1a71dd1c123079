// The rework of a session, folded from its events: what was done, how long each place was under heat, and what
// was tested afterwards.
import type { EventOf, WalkEvent } from '../events.js';
import type { Place } from './heat-limits.js';

export interface HeatRun {
  readonly place: Place;
  readonly t: number;
  readonly seconds: number;
  /** The program ended while heat was on: it was at least so long. */
  readonly atLeast: boolean;
}

export interface ReworkState {
  /** Time of the latest event. */
  readonly t: number;
  readonly confirmed: boolean;
  /** Heat that is on now. */
  readonly heat: EventOf<'heat-started'> | null;
  readonly runs: readonly HeatRun[];
  readonly logged: readonly EventOf<'rework-logged'>[];
  /** Limits that were told of since heat was started. */
  readonly told: readonly EventOf<'heat-limit-met'>[];
  /** Everything that belongs to the rework, in order. */
  readonly entries: readonly ReworkEntry[];
  readonly powerChecks: readonly EventOf<'power-checked'>[];
  readonly functionTests: readonly EventOf<'function-tested'>[];
  readonly closed: EventOf<'job-closed'> | null;
}

export type ReworkEntry = EventOf<
  'heat-cautions-confirmed' | 'heat-started' | 'heat-limit-met' | 'heat-stopped' | 'rework-logged'
>;

export const noRework: ReworkState = {
  t: 0,
  confirmed: false,
  heat: null,
  runs: [],
  logged: [],
  told: [],
  entries: [],
  powerChecks: [],
  functionTests: [],
  closed: null,
};

export const evolveRework = (state: ReworkState, event: WalkEvent): ReworkState => {
  const timed = { ...state, t: event.t };
  const noted = (): ReworkState => ({
    ...timed,
    entries: [...state.entries, event as ReworkEntry],
  });
  switch (event.type) {
    case 'session-resumed':
      // Cautions hold for the sitting in which they were confirmed.
      return { ...timed, confirmed: false };
    case 'heat-cautions-confirmed':
      return { ...noted(), confirmed: true };
    case 'heat-started':
      return { ...noted(), heat: event, told: [] };
    case 'heat-limit-met':
      return { ...noted(), told: [...state.told, event] };
    case 'heat-stopped':
      return { ...noted(), heat: null, told: [], runs: [...state.runs, runOf(event)] };
    case 'rework-logged':
      return {
        ...noted(),
        logged: [...state.logged, event],
        runs: isTimed(state, event) ? state.runs : [...state.runs, ...runsLogged(event)],
      };
    case 'power-checked':
      return { ...timed, powerChecks: [...state.powerChecks, event] };
    case 'function-tested':
      return { ...timed, functionTests: [...state.functionTests, event] };
    case 'job-closed':
      return { ...timed, closed: event };
    default:
      return timed;
  }
};

const runOf = ({ part, area, t, seconds, ended }: EventOf<'heat-stopped'>): HeatRun => ({
  place: { part, area },
  t: t - seconds,
  seconds,
  atLeast: ended === 'lost',
});

/** The entry that a stopped timer makes at the same moment tells no heat of its own. */
const isTimed = ({ entries }: ReworkState, { t, seconds }: EventOf<'rework-logged'>): boolean => {
  const last = entries.at(-1);
  return last?.type === 'heat-stopped' && last.t === t && last.seconds === seconds;
};

const runsLogged = ({ part, area, t, seconds }: EventOf<'rework-logged'>): readonly HeatRun[] =>
  seconds === undefined || seconds === 0
    ? []
    : [{ place: { part, area }, t, seconds, atLeast: false }];
