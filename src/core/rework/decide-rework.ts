// What follows from one act at the rework desk, or from time going by while heat is on. Pure, like the walk: the
// same state and input give the same events. Nothing here commands a tool.
import type { EventOf, WalkEvent } from '../events.js';
import type { HeatLimits } from '../profile/heat-limits-format.js';
import type { Profile } from '../profile/profile-format.js';
import { nextLimit } from './heat-clock.js';
import type { Place } from './heat-limits.js';
import { heatCautions, type ReworkAction, type ReworkTool } from './rework-events.js';
import { evolveRework, type ReworkState } from './rework-state.js';

export interface Setting {
  readonly tool?: ReworkTool | undefined;
  readonly setPoint?: number | undefined;
  readonly airflow?: number | undefined;
}

export type ReworkInput =
  | { readonly kind: 'confirm'; readonly t: number }
  | {
      readonly kind: 'heat-on';
      readonly t: number;
      readonly place: Place;
      readonly setting: Setting;
    }
  | { readonly kind: 'heat-off'; readonly t: number; readonly action: ReworkAction }
  | { readonly kind: 'log'; readonly t: number; readonly entry: Entry }
  /** Time has gone by. */
  | { readonly kind: 'tick'; readonly t: number };

export interface Entry extends Place, Setting {
  readonly action: ReworkAction;
  readonly seconds?: number | undefined;
  readonly note?: string | undefined;
}

export type ReworkRefusal = 'cautions' | 'heat-is-on' | 'heat-is-off';

export interface ReworkDecision {
  readonly state: ReworkState;
  readonly events: readonly WalkEvent[];
  readonly refused: ReworkRefusal | null;
}

export const decideRework = (
  state: ReworkState,
  input: ReworkInput,
  profile: Profile,
  shop: HeatLimits,
): ReworkDecision => {
  const passed = limitsUpTo(state, input.t, profile, shop);
  const now = passed.reduce(evolveRework, state);
  const done = eventsOf(now, input);
  if (typeof done === 'string') return { state: now, events: passed, refused: done };
  return { state: done.reduce(evolveRework, now), events: [...passed, ...done], refused: null };
};

/** Heat that was on when the program ended is off now, and was on for at least as long as is known. */
export const closeLostHeat = (state: ReworkState, t: number): readonly WalkEvent[] => {
  const { heat } = state;
  if (heat === null) return [];
  const seconds = Math.max(0, state.t - heat.t);
  return [{ type: 'heat-stopped', t, ...placeOf(heat), seconds, ended: 'lost' }];
};

/** More than anyone needs to be told of one moment. */
const mostAtOnce = 100;

const limitsUpTo = (
  state: ReworkState,
  t: number,
  profile: Profile,
  shop: HeatLimits,
): readonly WalkEvent[] => {
  const events: WalkEvent[] = [];
  let now = state;
  while (events.length < mostAtOnce) {
    const due = nextLimit(now, profile, shop);
    if (due === null || due.t > t) break;
    events.push(due);
    now = evolveRework(now, due);
  }
  return events;
};

const eventsOf = (state: ReworkState, input: ReworkInput): readonly WalkEvent[] | ReworkRefusal => {
  const { heat } = state;
  const { t } = input;
  switch (input.kind) {
    case 'tick':
      return [];
    case 'confirm':
      return state.confirmed
        ? []
        : [{ type: 'heat-cautions-confirmed', t, cautions: [...heatCautions] }];
    case 'heat-on':
      if (!state.confirmed) return 'cautions';
      if (heat !== null) return 'heat-is-on';
      return [{ type: 'heat-started', t, ...placeOf(input.place), ...settingOf(input.setting) }];
    case 'heat-off': {
      if (heat === null) return 'heat-is-off';
      const seconds = Math.max(0, t - heat.t);
      const place = placeOf(heat);
      return [
        { type: 'heat-stopped', t, ...place, seconds, ended: 'act' },
        {
          type: 'rework-logged',
          t,
          action: input.action,
          ...place,
          ...settingOf(heat),
          seconds,
        },
      ];
    }
    case 'log': {
      const { action, seconds, note } = input.entry;
      const logged: EventOf<'rework-logged'> = {
        type: 'rework-logged',
        t,
        action,
        ...placeOf(input.entry),
        ...settingOf(input.entry),
        ...(seconds === undefined ? {} : { seconds }),
        ...(note === undefined ? {} : { note }),
      };
      return [logged];
    }
  }
};

const placeOf = ({ part, area }: Place): { part?: string; area?: string } => ({
  ...(part === undefined ? {} : { part }),
  ...(area === undefined ? {} : { area }),
});

const settingOf = ({
  tool,
  setPoint,
  airflow,
}: Setting): { tool?: ReworkTool; setPoint?: number; airflow?: number } => ({
  ...(tool === undefined ? {} : { tool }),
  ...(setPoint === undefined ? {} : { setPoint }),
  ...(airflow === undefined ? {} : { airflow }),
});
