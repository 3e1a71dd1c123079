// The loop of a rework: act or passing time, decide, append to the file, then tell. Time is the monotonic clock's;
// nothing is shown that the file does not hold.
import type { EventOf, Numbered, WalkEvent } from '../core/events.js';
import type { HeatLimits } from '../core/profile/heat-limits-format.js';
import {
  closeLostHeat,
  decideRework,
  type ReworkInput,
  type ReworkRefusal,
} from '../core/rework/decide-rework.js';
import { nextLimit } from '../core/rework/heat-clock.js';
import { evolveRework, noRework, type ReworkState } from '../core/rework/rework-state.js';
import type { Clock, Follower } from './ports.js';

/** Where later work is appended: the stored session. */
export interface LaterRecord {
  readonly opened: EventOf<'session-opened'>;
  readonly before: readonly Numbered[];
  now(): number;
  append(events: readonly WalkEvent[]): readonly Numbered[];
  close(): Promise<void>;
}

type Without<T> = T extends unknown ? Omit<T, 't'> : never;
export type DeskAct = Without<Exclude<ReworkInput, { kind: 'tick' }>>;

export interface ReworkDesk {
  readonly state: ReworkState;
  readonly opened: EventOf<'session-opened'>;
  readonly limits: HeatLimits;
  /** Seconds of the session at this moment. */
  now(): number;
  /** Carries an act out, or says why not. @throws what the record throws when it cannot be written. */
  act(act: DeskAct): ReworkRefusal | null;
  follow(follower: Follower): void;
  close(): Promise<void>;
}

export const openReworkDesk = (
  record: LaterRecord,
  limits: HeatLimits,
  clock: Pick<Clock, 'after'>,
): ReworkDesk => {
  const { opened, before } = record;
  const profile = opened.profile.content;
  const followers: Follower[] = [];
  // Cautions were confirmed for an earlier sitting.
  let state: ReworkState = {
    ...before.reduce<ReworkState>(evolveRework, noRework),
    confirmed: false,
  };
  let cancel = (): void => undefined;

  const write = (events: readonly WalkEvent[], then: ReworkState): void => {
    if (events.length > 0) {
      const written = record.append(events);
      state = then;
      for (const event of written) for (const follow of followers) follow(event);
    }
    cancel();
    const due = nextLimit(state, profile, limits);
    cancel = due === null ? () => undefined : clock.after(Math.max(0, due.t - record.now()), tick);
  };
  const take = (input: ReworkInput): ReworkRefusal | null => {
    const decision = decideRework(state, input, profile, limits);
    write(decision.events, decision.state);
    return decision.refused;
  };
  const tick = (): void => void take({ kind: 'tick', t: record.now() });

  const lost = closeLostHeat(state, record.now());
  write(lost, lost.reduce(evolveRework, state));
  return {
    get state() {
      return state;
    },
    opened,
    limits,
    now: () => record.now(),
    act: (act) => take({ ...act, t: record.now() } as ReworkInput),
    follow: (follower) => void followers.push(follower),
    close: async () => {
      const left = closeLostHeat(state, record.now());
      write(left, left.reduce(evolveRework, state));
      cancel();
      await record.close();
    },
  };
};
