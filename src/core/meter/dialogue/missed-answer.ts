// What follows when a question was not answered in time: say so after a few, find out why, and start over,
// since a meter that was switched off and on has forgotten its set-up. Never gives up.

import { lateWords, muteWords, noReadingWords } from '../../words/english-meter.js';
import {
  type AskedSetting,
  type AskedState,
  canRecover,
  type Job,
  type Onward,
  type Turn,
} from './asked-state.js';
import type { DialogueEffect } from './dialogue-types.js';
import type { Step } from './script.js';

/** Two questions in a row, or three readings where other questions are answered. */
const muteAfter = 2;
const noReadingAfter = 3;
const shortestPauseS = 0.5;

export const missed = (
  setting: AskedSetting,
  before: AskedState,
  job: Job,
  rest: readonly Step[],
  t: number,
): Turn => {
  const { script } = setting;
  const expected = before.phase.at === 'asking' ? before.phase.step.expects : 'reading';
  const missedReads = before.missedReads + (expected === 'reading' ? 1 : 0);
  const markerMissed = script.marker !== undefined && expected === script.marker.expects;
  const unanswered = before.unanswered + 1;
  const isMute = unanswered >= muteAfter || missedReads >= noReadingAfter;
  const state: AskedState = {
    ...before,
    unanswered,
    missedReads,
    setUpDue: before.setUpDue || (job !== 'set-up' && isMute),
    outstanding: before.outstanding + 1,
    ...(expected === 'function' ? functionMissed(script, before, t) : {}),
    marker: markerMissed && before.marker === 'untried' ? 'unanswered' : before.marker,
    awakeDueAt:
      job === 'keep-awake' && script.keepAwake ? t + script.keepAwake.everyS : before.awakeDueAt,
  };
  const speaks = isMute && !state.silent;
  const effects: DialogueEffect[] = speaks
    ? [{ effect: 'says', t, says: 'no-answer', text: whyNone(setting, state) }]
    : [];
  return {
    state: speaks ? { ...state, silent: true } : state,
    effects,
    onward: afterMiss(setting, state, job, rest, t),
  };
};

/** A meter that does not know the question is not asked for ever: nothing then tells its function. */
const mostFunctionMissed = 2;

const functionMissed = (
  { functionQuery }: AskedSetting['script'],
  before: AskedState,
  t: number,
): Pick<AskedState, 'shown' | 'functionMissed' | 'functionDueAt'> => {
  const missedInARow = before.functionMissed + 1;
  const isGivenUp = functionQuery === undefined || missedInARow >= mostFunctionMissed;
  return {
    shown: null,
    functionMissed: missedInARow,
    functionDueAt: isGivenUp ? Number.POSITIVE_INFINITY : t + functionQuery.everyS,
  };
};

const afterMiss = (
  setting: AskedSetting,
  state: AskedState,
  job: Job,
  rest: readonly Step[],
  t: number,
): Onward => {
  if (job === 'set-up') return { go: 'rest', job, steps: rest };
  if (job === 'read' && !canRecover(setting, state)) return { go: 'job', job: 'clear' };
  if (job === 'read' && state.missedReads % 2 === 1) return { go: 'job', job: 'recover' };
  const until = t + Math.max(setting.script.pollS, shortestPauseS);
  return { go: 'pause', until, job: job === 'keep-awake' ? 'read' : 'set-up' };
};

const whyNone = ({ script }: AskedSetting, state: AskedState): string => {
  const reading = script.read.at(-1)?.text ?? '';
  if (state.strays > 0) return lateWords(reading, script.timeoutS);
  if (state.unanswered < muteAfter) return noReadingWords(reading, script.timeoutS);
  return muteWords(state.phase.at === 'asking' ? state.phase.step.text : reading, script.timeoutS);
};
