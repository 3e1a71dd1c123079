// A probe beside the walk: the next touch that settles is the reading of the place asked for. Then the walk goes on
// where it stood, and its place has not moved.
import type { EventOf } from '../events.js';
import type { Act } from '../inputs.js';
import { judgeAlone, judgeHere, readIn } from './judge-here.js';
import { beginPressTest } from './press.js';
import { probeTarget } from './probe-target.js';
import { readingOf } from './reading-of.js';
import type { Capture } from './state.js';
import { tellPlace } from './tell.js';
import type { Teller } from './teller.js';
import { probedPin } from './whereabouts.js';

export const beginProbe = (teller: Teller, t: number, act: Act): void => {
  const target = probeTarget(teller.state, act);
  if (target === null) return;
  const { probe, ...place } = target;
  if (probe === 'press') beginPressTest(teller, t, place.pin ?? '');
  else teller.tell({ type: 'probe-begun', t, probe, ...place });
};

/** Judges what was read at the place, and goes back to the walk. */
export const takeProbed = (teller: Teller, captured: Capture): void => {
  const { probing, plan, question } = teller.state;
  const pin = probing === null ? undefined : probedPin(teller.state, probing);
  if (probing === null || pin === undefined) return;
  const { t, wobble } = captured;
  if (question !== null)
    teller.tell({
      type: 'question-answered',
      t,
      question: question.question,
      pin: question.pin,
      by: 'contact',
    });
  const read = readIn(captured, teller.state);
  const wobbles = wobble === true ? ({ verdict: 'wobble', advice: 'hold-longer' } as const) : {};
  const { line, part, side } = probing;
  const reading = readingOf(captured, plan.function);
  if (side === undefined) {
    teller.tell({ type: 'pin-settled', t, touch: captured.touch, pin: pin.pin, line, ...reading });
    const found = { ...judgeHere(teller.state, pin, read), ...wobbles };
    teller.tell({ type: 'pin-judged', t, pin: pin.pin, line, ...found, agreed: true });
  } else {
    const found = { ...judgeAlone(teller.state, pin, read), ...wobbles };
    teller.tell({ type: 'place-judged', t, line, part: part ?? null, side, ...reading, ...found });
  }
  endProbe(teller, t, 'done');
};

export const endProbe = (
  teller: Teller,
  t: number,
  reason: EventOf<'probe-ended'>['reason'],
): void => {
  teller.tell({ type: 'probe-ended', t, reason });
  tellPlace(teller, t, true);
};
