// What the walk does about one input. Pure: the same state and input give the same events, live and in a
// rerun. Nothing here remembers anything; all memory is in the state, and evolve alone changes it.
import type { Verdict, WalkEvent } from '../events.js';
import type { Act, Input, LinkChange } from '../inputs.js';
import { isOverload, isValue, type Reading } from '../reading.js';
import { refusal } from './act.js';
import { captureAnsweredOpen, captureIfSettled } from './capture.js';
import { holdOrFree } from './hold.js';
import { beginPressTest, endPress, stepPress } from './press.js';
import { answerByTaps, askIfOpen } from './question.js';
import { cursorPin, likeliestWay, pinReadLast, type WalkState, waitsFor } from './state.js';
import { tellCaptures, tellPlace } from './tell.js';
import { tellSuspects } from './tell-suspects.js';
import { createTeller, type Teller } from './teller.js';

export interface Decision {
  readonly state: WalkState;
  readonly events: readonly WalkEvent[];
}

export const decide = (state: WalkState, input: Input): Decision => {
  const teller = createTeller(state);
  switch (input.kind) {
    case 'reading':
      decideReading(teller, input.reading);
      break;
    case 'act':
      decideAct(teller, input.t, input.act);
      break;
    case 'cue':
      teller.tell({ type: 'cue-given', t: input.t, cue: input.cue });
      break;
    case 'link':
      decideLink(teller, input.t, input.change, input.detail);
      break;
    case 'file':
      decideFile(teller, input);
      break;
    case 'meter':
      teller.tell({ type: 'meter-spoke', t: input.t, says: input.says, text: input.text });
      break;
  }
  return teller;
};

/** The first word of a walk: which pin it begins with, when nothing comes before. */
export const beginWalk = (state: WalkState): Decision => {
  const teller = createTeller(state);
  if (state.stage === 'walking') tellPlace(teller, state.t, true);
  return teller;
};

const decideReading = (teller: Teller, reading: Reading): void => {
  teller.tell({ type: 'reading-taken', ...reading });
  if (teller.state.paused === 'meter-silent') continueWalk(teller, reading.t);
  if (teller.state.paused !== null || teller.state.stage === 'closed') return;
  if (teller.state.press !== null) {
    stepPress(teller);
    return;
  }
  if (holdOrFree(teller, reading)) return;
  if (isValue(reading)) captureIfSettled(teller);
  if (isOverload(reading)) {
    answerByTaps(teller);
    askIfOpen(teller);
  }
  pressEachBadLine(teller, reading.t);
};

const decideAct = (teller: Teller, t: number, { act, pin, text }: Act): void => {
  const reason = refusal(teller.state, act, pin);
  if (reason !== null) {
    teller.tell({ type: 'act-refused', t, act, reason });
    return;
  }
  const before = teller.state;
  const subject = pin ?? cursorPin(before)?.pin;
  teller.tell({
    type: 'act-taken',
    t,
    act,
    ...(subject === undefined ? {} : { pin: subject }),
    ...(text === undefined ? {} : { text }),
  });
  switch (act) {
    case 'open':
      answer(teller, t);
      captureAnsweredOpen(teller, t);
      pressEachBadLine(teller, t);
      break;
    case 'next':
      answer(teller, t);
      acceptWhatWasRead(teller, t, before);
      tellCaptures(teller, t);
      tellPlace(teller, t, false);
      break;
    case 'skip':
      answer(teller, t);
      leaveUnread(teller, t, before);
      tellPlace(teller, t, true);
      break;
    case 'back':
    case 'go-to':
    case 'retake':
      answer(teller, t);
      tellPlace(teller, t, true);
      break;
    case 'dismiss':
      if (before.press === null) answer(teller, t);
      else endPress(teller, t, 'given-up');
      break;
    case 'press':
      beginPressTest(teller, t);
      break;
    case 'pause':
      teller.tell({ type: 'walk-paused', t, reason: 'asked' });
      break;
    case 'resume':
      continueWalk(teller, t);
      break;
    case 'quit':
      tellSuspects(teller, t);
      teller.tell({
        type: 'session-closed',
        t,
        reason: before.stage === 'finished' ? 'finished' : 'left',
      });
      break;
    case 'note':
    case 'pressing':
    case 'released':
      break;
  }
};

/** In a session that asks for it, a line that is settled and not normal is press-tested at once. */
const pressEachBadLine = (teller: Teller, t: number): void => {
  const { state, events } = teller;
  if (!state.pressEach || state.press !== null) return;
  const judged = events.findLast((event) => event.type === 'pin-judged');
  if (judged?.agreed !== true || !pressable.has(judged.verdict)) return;
  if (pinReadLast(state)?.pin === judged.pin) beginPressTest(teller, t);
};

const pressable: ReadonlySet<Verdict> = new Set(['open', 'low', 'high', 'short', 'wobble']);

const answer = (teller: Teller, t: number): void => {
  const { question } = teller.state;
  if (question === null) return;
  teller.tell({
    type: 'question-answered',
    t,
    question: question.question,
    pin: question.pin,
    by: 'act',
  });
};

/** "Next" after a capture that is not normal: the technician takes it as it is. */
const acceptWhatWasRead = (teller: Teller, t: number, before: WalkState): void => {
  const way = likeliestWay(before);
  const pin = before.plan.pins[way.index];
  const record = before.pins[way.index];
  if (way.stage !== 'confirming' || pin === undefined || record === undefined) return;
  const { verdict, confidence, expected } = record;
  teller.tell({
    type: 'pin-judged',
    t,
    pin: pin.pin,
    line: pin.line,
    verdict,
    confidence,
    expected,
    agreed: true,
  });
};

const leaveUnread = (teller: Teller, t: number, before: WalkState): void => {
  if (before.stage === 'ground-check') {
    teller.tell({ type: 'ground-checked', t, outcome: 'skipped' });
    return;
  }
  const pin = before.plan.pins[waitsFor(likeliestWay(before))];
  if (pin === undefined) return;
  teller.tell({
    type: 'pin-judged',
    t,
    pin: pin.pin,
    line: pin.line,
    verdict: 'unread',
    confidence: 1,
    expected: pin.expected,
    agreed: true,
  });
};

const decideLink = (
  teller: Teller,
  t: number,
  change: LinkChange,
  detail: string | undefined,
): void => {
  teller.tell({ type: 'link-changed', t, change, ...(detail === undefined ? {} : { detail }) });
  const { paused } = teller.state;
  switch (change) {
    case 'lost':
      if (paused === null || paused === 'meter-silent') {
        teller.tell({ type: 'walk-paused', t, reason: 'link-lost' });
      }
      break;
    case 'silent':
      if (paused === null) teller.tell({ type: 'walk-paused', t, reason: 'meter-silent' });
      break;
    case 'returned':
      if (paused === 'link-lost') continueWalk(teller, t);
      break;
    case 'opened':
    case 'failed':
    case 'ended':
      break;
  }
};

const decideFile = (
  teller: Teller,
  { t, change, detail }: Extract<Input, { kind: 'file' }>,
): void => {
  teller.tell({ type: 'file-changed', t, change, detail });
  const { paused } = teller.state;
  if (change === 'blocked' && paused === null) {
    teller.tell({ type: 'walk-paused', t, reason: 'file-blocked' });
  }
  if (change === 'writable' && paused === 'file-blocked') continueWalk(teller, t);
};

const continueWalk = (teller: Teller, t: number): void => {
  const pin = cursorPin(teller.state)?.pin ?? '';
  teller.tell({ type: 'walk-continued', t, pin });
};
