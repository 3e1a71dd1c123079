// Folds what a pin read, and what that means, into what is known of the pin.
import { estimateShift } from '../context/estimate-shift.js';
import type { EventOf } from '../events.js';
import { walksDonor } from '../profile/donor.js';
import { observe } from '../suspects/observe.js';
import { expectDonor } from './expect-donor.js';
import { unreadPin } from './open-walk.js';
import { pressDueAfter } from './press-due.js';
import { seenIn } from './seen.js';
import type { PinRecord, WalkState } from './state.js';
import { indexOfPin } from './whereabouts.js';

/** Captures told so far back can still be told anew. */
const keptNamed = 40;

export const takeSettled = (state: WalkState, settled: EventOf<'pin-settled'>): WalkState => {
  const index = indexOfPin(state, settled.pin);
  const capture =
    state.pending.find(({ touch }) => touch === settled.touch) ??
    state.named.find(({ capture: { touch } }) => touch === settled.touch)?.capture;
  const named = state.named.filter(({ capture: { touch } }) => touch !== settled.touch);
  const settledPin: WalkState = {
    ...withPin(state, index, ({ verdict, confidence, expected, agreed }) => ({
      verdict,
      confidence,
      expected,
      agreed,
      ...seenIn(settled, state.accuracy),
      touch: settled.touch,
    })),
    pending: state.pending.filter(({ touch }) => touch !== settled.touch),
    nextTouch: Math.max(state.nextTouch, settled.touch + 1),
    named: capture === undefined ? named : [...named.slice(1 - keptNamed), { capture, index }],
  };
  return expectDonor(settledPin, index);
};

export const takeJudged = (state: WalkState, judged: EventOf<'pin-judged'>): WalkState => {
  const index = indexOfPin(state, judged.pin);
  const { verdict, confidence, expected, agreed, advice, because } = judged;
  const onDonor = judged.board === 'donor';
  const withVerdict: WalkState = {
    ...withPin(state, index, ({ advice: _, because: __, ...record }) => ({
      ...(verdict === 'unread' ? unreadPin : record),
      verdict,
      confidence,
      expected,
      agreed,
      ...(advice === undefined ? {} : { advice }),
      ...(because === undefined ? {} : { because }),
    })),
    evidence: onDonor ? state.evidence : observe(state.evidence, judged, state.probing),
  };
  const judgedPin = expectDonor(withVerdict, index);
  if (judged.anew === true) {
    const { pressDue } = state;
    return verdict === 'normal'
      ? { ...judgedPin, pressDue: pressDue.filter((due) => due !== judged.pin) }
      : judgedPin;
  }
  return {
    ...judgedPin,
    opensInARow: verdict === 'open' ? opensInARow(judgedPin, index) : 0,
    shifts: estimateShift(judgedPin.pins, judgedPin.plan, state.recheck?.shifts),
    pressDue: onDonor ? state.pressDue : pressDueAfter(state, judged),
    recheckOutcome: null,
  };
};

/** Of two boards each hangs on the ground lead by itself, so that its own opens count: the first, the second, again. */
const opensInARow = ({ plan, pins, opensInARow: before }: WalkState, index: number): number => {
  if (!walksDonor(plan)) return before + 1;
  let run = 0;
  for (let at = index; pins[at]?.verdict === 'open'; at -= 2) run += 1;
  return 2 - (run % 2);
};

const withPin = (
  state: WalkState,
  index: number,
  change: (record: PinRecord) => PinRecord,
): WalkState => {
  const record = state.pins[index];
  if (record === undefined) return state;
  const pins = state.pins.slice();
  pins[index] = change(record);
  return { ...state, pins };
};
