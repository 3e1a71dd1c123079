// What the walk does about one act of the technician.
import type { Act } from '../inputs.js';
import { namesOf } from '../profile/plan.js';
import { refusal } from './act.js';
import { captureAnsweredOpen } from './capture.js';
import { continueWalk } from './continue-walk.js';
import { askedReply } from './pad-ear.js';
import { beginPressTest, endPress } from './press.js';
import { pressEachBadLine } from './press-each.js';
import { beginProbe, endProbe } from './probe.js';
import { probeRefusal } from './probe-target.js';
import { goOnReady } from './ready.js';
import type { WalkState } from './state.js';
import { tellCaptures, tellPlace } from './tell.js';
import { tellContext } from './tell-context.js';
import { tellRecheck } from './tell-recheck.js';
import { tellSuspects } from './tell-suspects.js';
import type { Teller } from './teller.js';
import { unreadAt } from './unread.js';
import { waitsFor } from './ways.js';
import { cursorPin, likeliestWay, pinReadLast } from './whereabouts.js';

export const decideAct = (teller: Teller, t: number, given: Act): void => {
  const { act, pin, text, by, line, part, side } = given;
  const reason =
    refusal(by === 'pad' ? lifted(teller.state) : teller.state, act, pin) ??
    (act === 'probe' ? probeRefusal(teller.state, given) : null);
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
    ...(line === undefined ? {} : { line }),
    ...(part === undefined ? {} : { part }),
    ...(side === undefined ? {} : { side }),
    ...(by === undefined ? {} : { by }),
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
      tellCaptures(teller, t, 'act');
      tellPlace(teller, t, false);
      break;
    case 'skip':
      if (before.ready !== null) {
        teller.tell({ type: 'ready-left', t, step: before.ready.step });
        goOnReady(teller, t);
        break;
      }
      answer(teller, t);
      leaveUnread(teller, t, before);
      tellPlace(teller, t, true);
      break;
    case 'back':
    case 'go-to':
    case 'retake':
      answer(teller, t);
      tellCaptures(teller, t, 'act');
      tellPlace(teller, t, true);
      break;
    case 'dismiss':
      dismiss(teller, t, before);
      break;
    case 'press':
      beginPressTest(teller, t, (before.alone ?? pinReadLast(before))?.pin ?? '');
      break;
    case 'probe':
      answer(teller, t);
      beginProbe(teller, t, given);
      break;
    case 'pause':
      teller.tell({ type: 'walk-paused', t, reason: 'asked' });
      break;
    case 'resume':
      continueWalk(teller, t);
      break;
    case 'quit':
      if (before.press !== null) endPress(teller, t, 'given-up');
      tellContext(teller, t);
      tellRecheck(teller, t, true);
      tellSuspects(teller, t);
      teller.tell({
        type: 'session-closed',
        t,
        reason: teller.state.stage === 'finished' ? 'finished' : 'left',
      });
      break;
    case 'zero':
      teller.tell({ type: 'ready-asked', t, step: 'lead-zero' });
      break;
    case 'reference':
      teller.tell({ type: 'ready-asked', t, step: 'reference' });
      break;
    case 'note':
    case 'pressing':
    case 'released':
      break;
  }
};

/** A reply was given from the pads: what the probe touches by now came after it. */
const lifted = (state: WalkState): WalkState => ({
  ...state,
  contact: { ...state.contact, touch: null, rest: null },
});

const dismiss = (teller: Teller, t: number, { press, probing }: WalkState): void => {
  const reply = askedReply(teller.state);
  if (reply !== null) teller.tell({ type: 'reply-cancelled', t, reply });
  else if (press !== null) endPress(teller, t, 'given-up');
  else if (probing !== null) endProbe(teller, t, 'given-up');
  else answer(teller, t);
};

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
  if (way.stage !== 'confirming' || pin === undefined || record?.touch == null) return;
  const { verdict, confidence, expected, because } = record;
  teller.tell({
    type: 'pin-judged',
    t,
    ...namesOf(pin),
    verdict,
    confidence,
    expected,
    agreed: true,
    ...(because === undefined ? {} : { because: [...because] }),
  });
};

const leaveUnread = (teller: Teller, t: number, before: WalkState): void => {
  if (before.stage === 'ground-check') {
    teller.tell({ type: 'ground-checked', t, outcome: 'skipped' });
    return;
  }
  const pin = before.plan.pins[waitsFor(likeliestWay(before))];
  if (pin === undefined) return;
  teller.tell(unreadAt(t, pin));
};
