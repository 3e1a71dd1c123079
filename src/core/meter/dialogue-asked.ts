// The conversation with a meter that answers: set it up, read it, keep it awake, come back after silence. One
// question is open at a time, and after an unanswered one no frame counts as a reading until it is certain
// that the late answer cannot be taken for the next.
import { hearAnswer } from './dialogue-answers.js';
import {
  type AskedSetting,
  type AskedState,
  askedStart,
  type Job,
  type Onward,
  type Turn,
} from './dialogue-asked-state.js';
import { missed } from './dialogue-missed.js';
import type { Step } from './dialogue-script.js';
import type { DialogueEffect, DialogueEvent, Stepped } from './dialogue-types.js';

/** The line must be quiet this long before the first question, and after the last answer of a clearing. */
const quietS = 0.15;
const longestListeningS = 1.5;
/** What needs no measuring is answered at once, or not at all: after a gap the next question is soon due. */
const quickWithinS = 1;
/** In time-outs: without a marker question, an answer that is later than this cannot be told apart. */
const latestAnswer = 2;

export const stepAsked = (
  setting: AskedSetting,
  state: AskedState,
  event: DialogueEvent,
): Stepped<AskedState> => {
  switch (event.event) {
    case 'opened': {
      const { t } = event;
      const phase = { at: 'listening', until: t + quietS, latest: t + longestListeningS } as const;
      const awakeDueAt = setting.script.keepAwake ? t : Number.POSITIVE_INFINITY;
      return waiting({ ...askedStart, phase, readDueAt: t, awakeDueAt }, []);
    }
    case 'lost':
      return { state: { ...state, phase: { at: 'closed' } }, effects: [] };
    case 'frame':
      return go(setting, event.t, hear(setting, state, event));
    case 'wake':
      return go(setting, event.t, woken(setting, state, event.t));
  }
};

const wait = (state: AskedState, effects: readonly DialogueEffect[] = []): Turn => ({
  state,
  effects,
  onward: { go: 'wait' },
});

const hear = (
  setting: AskedSetting,
  state: AskedState,
  heard: Extract<DialogueEvent, { event: 'frame' }>,
): Turn => {
  const { t } = heard;
  const { phase } = state;
  switch (phase.at) {
    case 'closed':
      return wait(state);
    case 'listening': {
      const until = Math.min(t + quietS, phase.latest);
      return wait({ ...state, phase: { ...phase, until } });
    }
    case 'clearing': {
      const heard = phase.heard + 1;
      const complete = heard > state.outstanding;
      const until = complete ? Math.min(t + quietS, phase.latest) : phase.latest;
      return wait({ ...state, phase: { ...phase, until, heard } });
    }
    case 'pausing':
      return wait({ ...state, strays: state.strays + 1 });
    case 'asking':
      return hearAnswer(setting, state, phase, heard);
  }
};

const woken = (setting: AskedSetting, state: AskedState, t: number): Turn => {
  const { phase } = state;
  if (phase.at === 'closed' || t < phase.until) return wait(state);
  switch (phase.at) {
    case 'listening':
      return { state, effects: [], onward: { go: 'job', job: 'set-up' } };
    case 'pausing':
      return { state, effects: [], onward: { go: 'job', job: phase.job } };
    case 'clearing':
      if (phase.heard === 0) return missed(setting, state, 'clear', [], t);
      return {
        state: { ...state, outstanding: 0, unanswered: 0 },
        effects: [],
        onward: { go: 'rest', job: 'clear', steps: [] },
      };
    case 'asking':
      return missed(setting, state, phase.job, phase.rest, t);
  }
};

/** Carries a turn on until the world has to do something. Ends, because every job waits or finishes. */
const go = (setting: AskedSetting, t: number, turn: Turn): Stepped<AskedState> => {
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

const waiting = (state: AskedState, effects: readonly DialogueEffect[]): Stepped<AskedState> => {
  const { phase } = state;
  if (phase.at === 'closed') return { state, effects };
  return { state, effects: [...effects, { effect: 'wake', t: phase.until }] };
};

const started = (
  { script }: AskedSetting,
  state: AskedState,
  onward: Extract<Onward, { go: 'job' | 'rest' }>,
  t: number,
): { readonly job: Job; readonly steps: readonly Step[] } => {
  if (onward.go === 'rest') return onward;
  const canRecover = script.marker !== undefined && state.marker !== 'unanswered';
  const job =
    onward.job === 'read' && state.outstanding > 0
      ? canRecover
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
      return { job, steps: script.read };
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
  for (const [index, step] of steps.entries()) {
    effects.push({ effect: 'send', text: step.text + script.sendEnd });
    if (step.expects === 'nothing') continue;
    if (job === 'clear' && step.expects === 'reading') {
      const latest = t + latestAnswer * script.timeoutS;
      return { ...state, phase: { at: 'clearing', until: latest, latest, heard: 0 } };
    }
    const rest = steps.slice(index + 1);
    const isQuick = state.unanswered > 0 && step.expects !== 'reading';
    const patience = isQuick ? Math.min(quickWithinS, script.timeoutS) : script.timeoutS;
    return { ...state, phase: { at: 'asking', job, step, rest, since: t, until: t + patience } };
  }
  return undefined;
};

const finished = ({ script }: AskedSetting, state: AskedState, job: Job, t: number): AskedState =>
  job === 'keep-awake' && script.keepAwake
    ? { ...state, awakeDueAt: t + script.keepAwake.everyS }
    : state;

const afterwards = (state: AskedState, job: Job, t: number): Onward => {
  if (job === 'set-up' || job === 'recover' || job === 'clear') {
    return { go: 'job', job: state.setUpDue && state.unanswered === 0 ? 'set-up' : 'read' };
  }
  const awakeFirst = state.awakeDueAt <= state.readDueAt;
  const until = awakeFirst ? state.awakeDueAt : state.readDueAt;
  const next: Job = awakeFirst ? 'keep-awake' : 'read';
  return until <= t ? { go: 'job', job: next } : { go: 'pause', until, job: next };
};
