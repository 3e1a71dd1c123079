// Gives captures their pins' names as soon as nearly every way agrees, takes a name back when later captures
// prove it wrong, and says where the walk stands.
import type { WalkEvent } from '../events.js';
import { type Naming, nameCapture } from './align.js';
import { judge } from './judge.js';
import { type Capture, likeliestWay, waitsFor } from './state.js';
import { surelyNamed } from './take-capture.js';
import { tallyPins } from './tally.js';
import type { Teller } from './teller.js';

/** Probability with which a name already given is taken back. */
const surelyMoved = 0.9999;
/** Opens in a row after which the ground clip is in doubt. Common practice, no source. */
const opensThatDoubtGround = 2;

/** Names every pending capture whose pin is known by now. */
export const tellCaptures = (teller: Teller, t: number): void => {
  realign(teller, t);
  for (const capture of teller.state.pending) {
    const naming = nameCapture(teller.state.alignment, capture.touch);
    if (naming !== null && naming.probability >= surelyNamed)
      tellCapture(teller, t, capture, naming);
  }
};

/** Says which pin is next, that a capture's pin is in doubt, or that the walk is finished. */
export const tellPlace = (teller: Teller, t: number, again: boolean): void => {
  const { state } = teller;
  const { plan, pending, question } = state;
  if (pending.length > 0) {
    const pin = plan.pins[Math.min(state.cursor, plan.pins.length - 1)];
    if (pin !== undefined && question === null) {
      teller.tell({ type: 'question-asked', t, question: 'same-or-next', pin: pin.pin });
    }
    return;
  }
  const at = waitsFor(likeliestWay(state));
  const pin = plan.pins[at];
  if (pin === undefined) {
    if (state.stage === 'walking')
      teller.tell({ type: 'walk-finished', t, tally: tallyPins(state) });
  } else if (again || at !== state.cursor || state.stage === 'finished') {
    teller.tell({ type: 'pin-reached', t, pin: pin.pin, line: pin.line });
  }
};

const tellCapture = (teller: Teller, t: number, capture: Capture, naming: Naming): void => {
  const { state } = teller;
  const pin = state.plan.pins[naming.index];
  if (pin === undefined) return;
  const { value, overload, standardUncertainty } = capture;
  const { function: measure } = state.plan;
  teller.tell({
    type: 'pin-settled',
    t,
    touch: capture.touch,
    pin: pin.pin,
    line: pin.line,
    ...(value === undefined ? {} : { value }),
    ...(overload === undefined ? {} : { overload }),
    standardUncertainty,
    readings: capture.readings,
    function: measure,
    ...(capture.range === undefined ? {} : { range: capture.range }),
    resolution: capture.resolution,
    from: capture.from,
    to: capture.to,
  });
  const observed =
    value === undefined
      ? ({ overload: true } as const)
      : { value, standardUncertainty: standardUncertainty ?? 0 };
  const judgement = judge(pin, observed);
  const way = likeliestWay(state);
  // Whatever the walk has gone past is settled business.
  const agreed = way.index !== naming.index || way.stage === 'done';
  const verdict = capture.wobble === true ? 'wobble' : judgement.verdict;
  const before = state.pins[naming.index];
  // A capture revised by a few counts is no news for the ear.
  const told = before?.touch === capture.touch && before.verdict === verdict;
  if (told && before.agreed === agreed) return;
  const judged: WalkEvent = {
    type: 'pin-judged',
    t,
    pin: pin.pin,
    line: pin.line,
    ...judgement,
    ...(capture.wobble === true ? ({ verdict: 'wobble', advice: 'hold-longer' } as const) : {}),
    agreed,
  };
  teller.tell(judged);
  if (teller.state.opensInARow >= opensThatDoubtGround) {
    teller.tell({ type: 'ground-doubted', t, opens: teller.state.opensInARow });
  }
};

/** Captures that were told under one name and, as later ones show, belong to another pin. */
const realign = (teller: Teller, t: number): void => {
  const { state } = teller;
  const moved: { capture: Capture; naming: Naming; from: number }[] = [];
  for (const { capture, index } of state.named) {
    const naming = nameCapture(state.alignment, capture.touch);
    if (naming !== null && naming.index !== index && naming.probability >= surelyMoved) {
      moved.push({ capture, naming, from: index });
    }
  }
  const last = moved.at(-1);
  if (last === undefined) return;
  teller.tell({
    type: 'walk-realigned',
    t,
    shift: last.naming.index - last.from,
    pin: state.plan.pins[last.naming.index]?.pin ?? '',
    because: 'fits-better',
  });
  const filled = new Set(moved.map(({ naming }) => naming.index));
  for (const { from } of moved) {
    const pin = state.plan.pins[from];
    if (filled.has(from) || pin === undefined) continue;
    const unread = {
      verdict: 'unread',
      confidence: 1,
      expected: pin.expected,
      agreed: true,
    } as const;
    teller.tell({ type: 'pin-judged', t, pin: pin.pin, line: pin.line, ...unread });
  }
  for (const { capture, naming } of moved) tellCapture(teller, t, capture, naming);
};
