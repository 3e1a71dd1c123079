// What a meter that answers is asked next: which job, which of its steps, and how long each may take to be answered.
import { overdueAfter } from './answer-pace.js';
import {
  type AskedSetting,
  type AskedState,
  canRecover,
  type Job,
  latestAnswer,
  type Onward,
  quickWithinS,
  quietS,
  type Turn,
} from './asked-state.js';
import type { DialogueEffect, Stepped } from './dialogue-types.js';
import type { Step } from './script.js';

/** A meter that measures anew whenever it is spoken to must be let finish: so often in a row it is not asked between. */
const mostLostReads = 3;

/** Carries a turn on until the world has to do something. Ends, because every job waits or finishes. */
export const carryOn = (setting: AskedSetting, t: number, turn: Turn): Stepped<AskedState> => {
  const effects = [...turn.effects];
  let { state, onward } = turn;
  while (onward.go !== 'wait') {
    if (onward.go === 'pause') {
      state = { ...state, phase: { at: 'pausing', until: onward.until, job: onward.job } };
      break;
    }
    const { job, steps } = started(setting, state, onward, t);
    if (onward.go === 'job') {
      const readDueAt = job === 'read' ? t + setting.script.pollS : state.readDueAt;
      const setUpDue = state.setUpDue && (job !== 'set-up' || state.unanswered > 0);
      state = { ...state, entries: 0, readDueAt, setUpDue };
    }
    const asked = ask(setting, state, job, steps, t, effects);
    if (asked) {
      state = asked;
      break;
    }
    state = finished(setting, state, job, t);
    onward = afterwards(state, job, t);
  }
  return waiting(state, effects);
};

export const waiting = (
  state: AskedState,
  effects: readonly DialogueEffect[],
): Stepped<AskedState> => {
  const { phase } = state;
  if (phase.at === 'closed') return { state, effects };
  return { state, effects: [...effects, { effect: 'wake', t: phase.until }] };
};

const started = (
  setting: AskedSetting,
  state: AskedState,
  onward: Extract<Onward, { go: 'job' | 'rest' }>,
  t: number,
): { readonly job: Job; readonly steps: readonly Step[] } => {
  const { script } = setting;
  if (onward.go === 'rest') return onward;
  const job =
    onward.job === 'read' && state.outstanding > 0
      ? canRecover(setting, state)
        ? 'recover'
        : 'clear'
      : onward.job;
  switch (job) {
    case 'set-up':
      return { job, steps: script.setUp };
    case 'read': {
      const query = script.functionQuery;
      const isDue = query !== undefined && state.functionDueAt <= t;
      return { job, steps: isDue ? [query.step, ...script.read] : script.read };
    }
    case 'clear':
      return { job, steps: [] };
    case 'recover':
      return { job, steps: script.marker ? [script.marker] : [] };
    case 'keep-awake':
      return { job, steps: script.keepAwake ? [script.keepAwake.step] : [] };
  }
};

/** Sends steps up to the first question and waits for its answer; undefined when no question is left. */
const ask = (
  { script }: AskedSetting,
  state: AskedState,
  job: Job,
  steps: readonly Step[],
  t: number,
  effects: DialogueEffect[],
): AskedState | undefined => {
  if (job === 'clear' && state.outstanding > 0) {
    const askedAt = Math.max(state.askedAt, state.owed.at(-1) ?? state.askedAt);
    const latest = Math.max(t, askedAt + latestAnswer * script.timeoutS);
    return { ...state, phase: { at: 'clearing', until: latest, latest, heard: 0 } };
  }
  for (const [index, step] of steps.entries()) {
    effects.push({ effect: 'send', text: step.text + script.sendEnd });
    if (step.expects === 'nothing') continue;
    const rest = steps.slice(index + 1);
    const isReading = step.expects === 'reading';
    const isQuick = !isReading && (state.unanswered > 0 || job === 'recover');
    const answerBy = t + (isQuick ? Math.min(quickWithinS, script.timeoutS) : script.timeoutS);
    const isWatched = isReading && state.marker === 'answered' && state.lostReads < mostLostReads;
    const until = isWatched ? Math.min(answerBy, t + overdueAfter(state.pace)) : answerBy;
    const phase = { at: 'asking', job, step, rest, since: t, until, answerBy } as const;
    const isMarker = step === script.marker;
    const owed = isMarker ? [...state.owed, t] : state.owed;
    const isTelling = isReading || step.expects === 'anything';
    const askedAt = isTelling ? t : state.askedAt;
    return { ...state, owed, askedAt, phase: { ...phase, overdue: false } };
  }
  return undefined;
};

const finished = ({ script }: AskedSetting, state: AskedState, job: Job, t: number): AskedState =>
  job === 'keep-awake' && script.keepAwake
    ? { ...state, awakeDueAt: t + script.keepAwake.everyS }
    : state;

const afterwards = (state: AskedState, job: Job, t: number): Onward => {
  if (job === 'set-up' || job === 'recover' || job === 'clear') {
    const next: Job = state.setUpDue && state.unanswered === 0 ? 'set-up' : 'read';
    // A meter that mixes up the order of its answers has still one to give.
    return job === 'recover'
      ? { go: 'pause', until: t + quietS, job: next }
      : { go: 'job', job: next };
  }
  const awakeFirst = state.awakeDueAt <= state.readDueAt;
  const until = awakeFirst ? state.awakeDueAt : state.readDueAt;
  const next: Job = awakeFirst ? 'keep-awake' : 'read';
  return until <= t ? { go: 'job', job: next } : { go: 'pause', until, job: next };
};
