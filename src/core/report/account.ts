// The whole session as a report needs it: the walk's last state, folded as live and in a replay, and beside it
// what happened on the way. Takes the events one by one and keeps no readings. Without a header there is no account.
import type { EventOf, Numbered } from '../events.js';
import { emptyJob, foldJob, type Job } from '../job/job.js';
import { isBenchSpeaking } from '../meter/bench-identity.js';
import { evolveRework, noRework, type ReworkState } from '../rework/rework-state.js';
import { foldStored, openStored } from '../walk/fold-stored.js';
import type { WalkState } from '../walk/state.js';
import { cursorPin } from '../walk/whereabouts.js';
import { type ActEntry, createActLog } from './act-log.js';
import { createGroundLog, type GroundLog } from './ground-log.js';
import { createInterruptionLog, type Interruption } from './interruption-log.js';
import { createMeterLog, type MeterLog } from './meter-log.js';
import { createPressLog, type PressLog } from './press-log.js';
import { type Asked, createQuestionLog } from './question-log.js';
import { createTouchLog, type Touch } from './touch-log.js';

type Advice = NonNullable<EventOf<'pin-judged'>['advice']>;

export interface Account {
  readonly opened: EventOf<'session-opened'>;
  /** No real meter was there: said at the opening, or by the meter itself. */
  readonly simulated: boolean;
  /** The openings of the session: the first and every later one. */
  readonly sittings: readonly (EventOf<'session-opened'> | EventOf<'session-resumed'>)[];
  readonly state: WalkState;
  readonly endT: number;
  /** When the walk itself ended: later additions to the record are no measuring. */
  readonly walkEndT: number;
  /** Intake, cautions, residual volts and triage. */
  readonly job: Job;
  /** What was done since, and how the job ended. */
  readonly rework: ReworkState;
  readonly touches: ReadonlyMap<string, readonly Touch[]>;
  /** What would help next at a pin, where the last judgement said so. */
  readonly advice: ReadonlyMap<string, Advice>;
  readonly asked: readonly Asked[];
  readonly acts: readonly ActEntry[];
  readonly interruptions: readonly Interruption[];
  readonly ground: Pick<GroundLog, 'values' | 'outcome'>;
  readonly meter: Omit<MeterLog, 'take'>;
  readonly press: Omit<PressLog, 'take'>;
}

/** Null when the events do not begin with `session-opened`. */
export const accountOf = (events: Iterable<Numbered>): Account | null => {
  let opened: EventOf<'session-opened'> | undefined;
  let state: WalkState | undefined;
  let rework = noRework;
  let job = emptyJob;
  let walkEndT = 0;
  let isRecord = false;
  let simulated = false;
  const sittings: Account['sittings'][number][] = [];
  const advice = new Map<string, Advice>();
  const touches = createTouchLog();
  const questions = createQuestionLog();
  const acts = createActLog();
  const interruptions = createInterruptionLog();
  const ground = createGroundLog();
  const meter = createMeterLog();
  const press = createPressLog();
  for (const event of events) {
    if (event.type === 'session-opened' || event.type === 'session-resumed') sittings.push(event);
    if (event.type === 'session-opened') opened ??= event;
    simulated ||= event.type === 'session-opened' ? event.simulated : isBenchSpeaking(event);
    if (opened === undefined) return null;
    if (event.type === 'session-resumed') isRecord = event.work === 'record';
    if (!isRecord) walkEndT = event.t;
    rework = evolveRework(rework, event);
    job = foldJob(job, event);
    state = state === undefined ? openStored(opened) : foldStored(state, event);
    for (const log of [touches, questions, acts, ground, meter, press]) log.take(event);
    interruptions.take(event, cursorPin(state)?.pin ?? null);
    if (event.type === 'pin-judged') {
      if (event.advice === undefined) advice.delete(event.pin);
      else advice.set(event.pin, event.advice);
    }
  }
  if (opened === undefined || state === undefined) return null;
  return {
    opened,
    simulated,
    sittings,
    state,
    endT: state.t,
    walkEndT,
    job,
    rework,
    touches: touches.byPin,
    advice,
    asked: questions.asked,
    acts: acts.entries,
    interruptions: interruptions.interruptions,
    ground,
    meter,
    press,
  };
};
