// What was read at a pin, judged in the light of all that the walk has read elsewhere.
import {
  type ContextJudgement,
  judgePinInContext,
  judgeShifted,
} from '../context/judge-in-context.js';
import type { ReadPin } from '../context/read-pin.js';
import { reasonsOf } from '../context/reasons.js';
import type { EventOf } from '../events.js';
import type { PlannedPin } from '../profile/plan.js';
import { type Judgement, judge } from './judge.js';
import { nextAction } from './next-action.js';
import { seenIn } from './seen.js';
import type { Capture, WalkState } from './state.js';

/** What the event of a verdict says of it. */
export type Found = Pick<
  EventOf<'pin-judged'>,
  'verdict' | 'confidence' | 'expected' | 'advice' | 'because'
>;

type Board = Pick<WalkState, 'plan' | 'accuracy' | 'shifts'> & {
  readonly pins: readonly ReadPin[];
};

/** A capture before its verdict. */
export const readIn = (capture: Capture, { accuracy }: Pick<WalkState, 'accuracy'>): ReadPin => ({
  ...seenIn(capture, accuracy),
  verdict: 'unsure',
});

/** By the limits as this meter shows them, without looking at mates and groups. */
export const judgeAlone = (board: Board, pin: PlannedPin, read: ReadPin): Judgement =>
  judgeShifted(pin, read, board.shifts, judge) ?? judge(pin, { overload: true });

/** With all that was read elsewhere; `read` takes the place of what was read here before. */
export const judgeHere = (board: Board, pin: PlannedPin, read: ReadPin): Found => {
  const pins = board.pins.slice();
  pins[pin.index] = read;
  const judged = judgePinInContext(pin, pins, board.plan, board.shifts, judge);
  return judged === null ? judgeAlone(board, pin, read) : withReasons(judged, pin, read, board);
};

/** A board that is called good mostly is, at any one line. Common practice, no source. */
const calledGood = 0.9;

/** Where the donor shows nothing, or next to nothing, and the patient reads a value, the donor's line is the likelier fault. */
const readsMoreThanDonor = ({ verdict, expected }: Judgement): boolean =>
  expected === 'overload'
    ? verdict !== 'short'
    : expected !== null && expected.low <= 0 && verdict === 'high';

/** A judgement with its reasons and with what would help next. */
export const withReasons = (
  judged: ContextJudgement,
  pin: PlannedPin,
  read: ReadPin,
  { accuracy, plan }: Pick<Board, 'accuracy' | 'plan'>,
): Found => {
  const { expected, mate } = judged;
  const differs = pin.fromDonor?.alone === true && judged.verdict !== 'normal';
  const verdict = differs && readsMoreThanDonor(judged) ? 'unsure' : judged.verdict;
  const confidence = differs ? Math.min(judged.confidence, calledGood) : judged.confidence;
  const because = [
    ...(pin.fromDonor === undefined ? [] : (['donor'] as const)),
    ...(differs ? (['boards-differ'] as const) : []),
    ...reasonsOf(judged),
  ];
  const advice = nextAction(judged, { pin, read, mate }, accuracy, plan.function);
  return {
    verdict,
    confidence,
    expected,
    ...(advice === undefined ? {} : { advice }),
    ...(because.length === 0 ? {} : { because }),
  };
};
