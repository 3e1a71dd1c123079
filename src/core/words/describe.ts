// One event as one line of words, or null where there is nothing to say. The line for a judged pin needs what
// the pin read, so the state is the one after the event.
import { isJobEvent, isReworkEvent } from '../event-families.js';
import type { EventOf, Numbered, WalkEvent } from '../events.js';
import { formatReading } from '../measure/format-reading.js';
import { isClosing } from '../press/press-stage.js';
import { offBoard, walksDonor } from '../profile/donor.js';
import { siUnit } from '../reading.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';
import { describeJob } from './describe-job.js';
import { describePress, describeTrace } from './describe-press.js';
import { describeRework } from './describe-rework.js';
import { probeInWords, suspectsInWords } from './describe-suspects.js';
import { shownConfidence, shownExpected, shownReference, shownValue, tallyOf } from './shown.js';
import type { Words } from './words.js';

export const describe = (
  event: Numbered | WalkEvent,
  state: WalkState,
  words: Words,
): string | null => {
  if (isJobEvent(event)) return describeJob(event, state.profile, words.job).join(' ');
  if (isReworkEvent(event)) return describeRework(event, words.rework);
  const unit = siUnit(state.plan.function);
  switch (event.type) {
    case 'session-opened':
      return words.opened(
        event.profile.content.title,
        event.measure.function,
        event.measure.polarity,
      );
    case 'session-resumed':
      if (event.work === 'record') return words.addedTo;
      return words.resumed(state.plan.pins[state.cursor]?.pin ?? null, event.tornBytes);
    case 'ready-asked':
      return words.context.readyAsked(event.step, shownReference(state));
    case 'ready-left':
      return words.context.readyLeft(event.step);
    case 'lead-zeroed':
      return words.context.leadZeroed(formatReading(event.ohms, event.standardUncertainty, unit));
    case 'lead-zero-refused':
      return words.context.leadZeroRefused(event.refused);
    case 'reference-checked':
      return words.context.reference(event.outcome, state.plan.function);
    case 'ground-touched':
      return words.groundTouched(event.which, formatReading(event.value, null, unit));
    case 'ground-repeated':
      return words.groundRepeated;
    case 'ground-missed':
      return words.groundMissed(formatReading(event.value, null, unit));
    case 'ground-checked':
      return event.outcome === 'good' ? words.groundGood : words.groundSkipped;
    case 'ground-doubted':
      return words.groundDoubted(event.opens);
    case 'pin-reached':
      return reachedLine(event, state, words);
    case 'pin-judged': {
      const line = judgedLine(event, state, words);
      if (event.anew === true) return words.context.anew(line);
      return event.agreed ? line : `${line}. ${words.touchAgain}`;
    }
    case 'shift-estimated':
      return words.context.shift(event.lines, event.shift);
    case 'question-asked': {
      const { place, pin, question } = event;
      if (place === undefined) return words.question(question, pin);
      const { line = '' } = state.plan.pins[indexOfPin(state, pin)] ?? {};
      return words.question(question, words.probePlace(line, place.part ?? null, place.side));
    }
    case 'probe-begun':
      return words.probeBegun(event, probeInWords(event, words));
    case 'place-judged': {
      const { line, part, side, verdict, overload, value, standardUncertainty } = event;
      const read =
        overload === true || value === undefined
          ? words.overload
          : formatReading(value, standardUncertainty, unit);
      const place = words.probePlace(line, part, side);
      return words.placeJudged(place, read, verdict, shownExpected(event.expected, unit, words));
    }
    case 'probe-ended':
      return event.reason === 'given-up' ? words.probeGivenUp : null;
    case 'question-answered':
      return event.by === 'contact' ? null : words.answered(event.question, event.pin);
    case 'walk-held':
      return words.held(event.reason, event.detail);
    case 'walk-freed':
      return words.freed;
    case 'walk-paused':
      return words.paused(event.reason);
    case 'walk-continued':
      return words.continued(event.pin);
    case 'walk-realigned':
      return words.realigned(event.shift, event.pin);
    case 'walk-finished':
      return words.finished(words.tally(tallyOf(event.tally)));
    case 'link-changed':
      return words.link(event.change, event.detail ?? '');
    case 'act-refused':
      return words.refused(event.act, event.reason);
    case 'act-taken':
      return words.taken(event.act, event.pin ?? '', event.text ?? '');
    case 'reply-asked':
      return words.replyAsked(event.reply);
    case 'reply-given':
      return words.replyGiven(event.reply);
    case 'reply-cancelled':
      return words.replyCancelled(event.reply);
    case 'reply-shadowed':
      return words.replyShadowed(event.reply);
    case 'meter-spoke':
      return words.meterSpoke(event.says, event.text);
    case 'file-changed':
      return words.file(event.change, event.detail);
    case 'press-begun':
      return words.pressBegun(event.pin, event.line, event.free === true);
    case 'reading-returned':
      return words.readingTurned(event.line, true, formatReading(event.value, null, unit));
    case 'reading-lost':
      return words.readingTurned(
        event.line,
        false,
        event.value === null ? null : formatReading(event.value, null, unit),
      );
    case 'press-traced':
      return describeTrace(event, words);
    case 'press-moved':
      return words.pressMoved(event.place, event.sham);
    case 'cue-given':
      if (event.place === undefined || isClosing(event, state.press)) return null;
      return words.cueGiven(event.cue, event.place);
    case 'press-compared':
      return words.pressCompared(event.line, event.outcome, event.parts.join(', '));
    case 'press-ended':
      return words.pressEnded(event.reason);
    case 'press-judged':
      return describePress(event, words);
    case 'suspects-ranked':
      return event.quiet === true ? null : suspectsInWords(event, state, words);
    case 'control-compared':
      return event.outcome === 'moved'
        ? words.rework.controlMoved(event.pin, event.line)
        : words.rework.controlAsBefore(event.pin, event.line);
    case 'recheck-compared':
      return words.rework.outcome[event.outcome];
    case 'reading-taken':
    case 'touch-captured':
    case 'pin-settled':
    case 'session-closed':
      return null;
  }
};

const reachedLine = (
  { pin, line, board }: EventOf<'pin-reached'>,
  { plan }: WalkState,
  words: Words,
): string =>
  walksDonor(plan)
    ? words.reachedOn(board ?? 'patient', offBoard(pin).name, offBoard(line).name)
    : words.reached(pin, line);

/** Pin, reading, verdict and how sure it is; of a verdict that is not normal also why, and what would help next. */
const judgedLine = (event: EventOf<'pin-judged'>, state: WalkState, words: Words): string => {
  const { pin, line, verdict, expected, advice, because = [] } = event;
  const onBoard = walksDonor(state.plan)
    ? `${words.board[event.board ?? 'patient']} ${offBoard(pin).name}`
    : pin;
  const told = words.judged(
    onBoard,
    offBoard(line).name,
    shownValue(state, pin, words),
    verdict,
    verdict === 'unread' ? '' : shownConfidence(event, words),
    shownExpected(expected, siUnit(state.plan.function), words),
  );
  if (verdict === 'normal') return told;
  const why = because.map((reason) => words.context.reason[reason]);
  const next = advice === undefined ? [] : [words.context.advice[advice]];
  return [told, ...why, ...next].join('; ');
};
