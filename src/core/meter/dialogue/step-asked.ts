// The conversation with a meter that answers: set it up, read it, keep it awake, come back after silence. One
// question is open at a time, and after an unanswered one no frame counts as a reading until it is certain
// that the late answer cannot be taken for the next.

import {
  type AskedSetting,
  type AskedState,
  type Asking,
  askedStart,
  type Heard,
  quickWithinS,
  quietS,
  type Turn,
} from './asked-state.js';
import { carryOn, waiting } from './carry-on.js';
import type { DialogueEffect, DialogueEvent, Stepped } from './dialogue-types.js';
import { hearAnswer } from './hear-answer.js';
import { missed } from './missed-answer.js';

const longestListeningS = 1.5;

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
      return carryOn(setting, event.t, hear(setting, state, event));
    case 'wake':
      return carryOn(setting, event.t, woken(setting, state, event.t));
  }
};

const wait = (state: AskedState, effects: readonly DialogueEffect[] = []): Turn => ({
  state,
  effects,
  onward: { go: 'wait' },
});

const hear = (setting: AskedSetting, state: AskedState, heard: Heard): Turn => {
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
      const complete = heard >= state.outstanding;
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
      return {
        state: { ...state, outstanding: 0, unanswered: phase.heard > 0 ? 0 : state.unanswered },
        effects: [],
        onward: { go: 'rest', job: 'clear', steps: [] },
      };
    case 'asking':
      return t < phase.answerBy
        ? overdue(setting, state, phase, t)
        : missed(setting, state, phase.job, phase.rest, t);
  }
};

/** The reading may yet come; if the marker is answered first, it will not: answers come in order. */
const overdue = ({ script }: AskedSetting, state: AskedState, phase: Asking, t: number): Turn => {
  const until = Math.min(t + quickWithinS, phase.answerBy);
  const text = (script.marker?.text ?? '') + script.sendEnd;
  return wait({ ...state, owed: [...state.owed, t], phase: { ...phase, until, overdue: true } }, [
    { effect: 'send', text },
  ]);
};
