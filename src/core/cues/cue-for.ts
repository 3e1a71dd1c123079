// Which cue follows which event, and in what words; null where silence says it best. The state is the one after
// the event, or after everything decided with it.
import { isJobEvent } from '../event-families.js';
import type { EventOf, WalkEvent } from '../events.js';
import type { PressFinding } from '../press/decide-press.js';
import { isClosing } from '../press/press-stage.js';
import { offBoard, walksDonor } from '../profile/donor.js';
import { type Place, placeName } from '../rework/heat-limits.js';
import { isLead } from '../suspects/priors.js';
import type { WalkState } from '../walk/state.js';
import { cursorPin } from '../walk/whereabouts.js';
import { tallyOf } from '../words/shown.js';
import type { SpokenWords } from '../words/spoken-words.js';
import type { Words } from '../words/words.js';
import type { Cue, CueKind } from './cue.js';
import { sheet } from './sheet.js';
import { speakable } from './speakable.js';
import { spokenPin } from './spoken-pin.js';

export const cueFor = (event: WalkEvent, state: WalkState, words: Words): Cue | null => {
  // The job around the walk is written and read, not heard.
  if (isJobEvent(event)) return null;
  const { spoken } = words;
  const beside = walksDonor(state.plan);
  const said = (pin: string): string => {
    const { board, name } = offBoard(pin);
    return beside ? spoken.donor.pin(board, spokenPin(name, spoken)) : spokenPin(pin, spoken);
  };
  const touchGround = beside ? spoken.donor.touchGround : spoken.touchGround;
  const here = cursorPin(state)?.pin;
  const hereSaid = here === undefined ? '' : said(here);
  switch (event.type) {
    case 'session-opened':
      return event.groundCheck ? cue('touch-ground', touchGround) : null;
    case 'session-resumed':
      if (event.work === 'record') return null;
      return state.stage === 'ground-check'
        ? cue('touch-ground', touchGround)
        : cue('continued', spoken.continued(hereSaid));
    case 'ready-asked':
      return cue('touch-ground', spoken.readyAsked[event.step]);
    case 'lead-zeroed':
      return cue('ground-good', spoken.leadZeroed);
    case 'lead-zero-refused':
      return cue('ground-missed', spoken.leadZeroRefused);
    case 'reference-checked':
      return event.outcome.ok
        ? cue('ground-good', spoken.referenceGood)
        : cue('ground-missed', spoken.referenceBad);
    case 'ground-touched':
      // The second touch is told by the outcome of the check.
      if (event.which === 2) return null;
      return cue('ground-first', beside ? spoken.donor.groundFirst : spoken.groundFirst);
    case 'ground-repeated':
      return cue('touch-ground', spoken.groundRepeated);
    case 'ground-missed':
      return cue('ground-missed', spoken.groundMissed);
    case 'ground-checked':
      return event.outcome === 'good'
        ? cue('ground-good', spoken.groundGood(hereSaid))
        : cue('ground-skipped', spoken.groundSkipped(hereSaid));
    case 'ground-doubted':
      return cue('ground-doubted', spoken.groundDoubted(spoken.number(event.opens)));
    case 'pin-reached':
      return cue('place', spoken.place(said(event.pin)));
    case 'pin-judged':
      // Nothing was touched: the ear would take it for the pin under the probe.
      if (event.anew === true) return null;
      return cue(
        judgedKind(event),
        spoken.judged(said(event.pin), words.verdict[event.verdict], event.agreed),
      );
    case 'question-asked': {
      const { question, pin, place } = event;
      const asked =
        place === undefined
          ? spoken.question(question, said(pin))
          : spoken.placeOpen(saidPart(place.part ?? null, spoken), place.side);
      return cue(`question-${question}`, asked);
    }
    case 'probe-begun': {
      const { pin = null, part = null, side = 'chip' } = event;
      const place = {
        pin: event.side === undefined && pin !== null ? said(pin) : null,
        part: saidPart(part, spoken),
        side,
      };
      return cue('probe-place', spoken.probePlace(place));
    }
    case 'place-judged': {
      const { verdict, side } = event;
      const part = saidPart(event.part, spoken);
      return cue(verdict, spoken.placeJudged(part, side, words.verdict[verdict]));
    }
    case 'walk-held':
      return cue(event.reason === 'ground-lost' ? 'lead-off' : 'held', spoken.held[event.reason]);
    case 'walk-freed':
      return cue('freed', spoken.freed);
    case 'walk-paused':
      return cue(pausedKinds[event.reason], spoken.paused[event.reason]);
    case 'walk-continued':
      return cue('continued', spoken.continued(event.pin === '' ? '' : said(event.pin)));
    case 'walk-realigned':
      return cue('realigned', spoken.realigned(said(here ?? event.pin)));
    case 'walk-finished':
      return cue(
        'finished',
        spoken.finished(
          tallyOf(event.tally).map(([verdict, n]) => [spoken.number(n), words.verdict[verdict]]),
        ),
      );
    case 'link-changed':
      return linkCue(event, words);
    case 'file-changed':
      return event.change === 'blocked'
        ? cue('file-blocked', spoken.paused['file-blocked'])
        : cue('file-written', spoken.fileWritten);
    case 'meter-spoke':
      return event.says === 'error' ? cue('meter-error', spoken.meterError) : null;
    case 'act-taken':
      return cue('heard', spoken.act[event.act]);
    case 'act-refused':
      return cue('refused', spoken.refused(event.reason));
    case 'reply-asked':
      return cue('reply-asked', spoken.replyAsked(event.reply));
    case 'reply-cancelled':
      return cue('reply-cancelled', spoken.replyCancelled(event.reply));
    case 'reply-shadowed':
      return cue('reply-shadowed', spoken.replyShadowed(event.reply));
    case 'cue-given':
      return isClosing(event, state.press) ? null : cue(event.cue, spoken.cue[event.cue]);
    case 'press-moved':
      return cue(
        event.sham ? 'press-sham' : 'press-place',
        spoken.pressPlace(saidPart(event.place, spoken), event.sham),
      );
    case 'press-judged':
      return cue(pressedKinds[event.finding], spoken.pressFinding(event.finding));
    case 'suspects-ranked':
      return event.quiet === true ? null : suspectCue(event, spoken);
    case 'heat-started':
      return cue('heat-on', spoken.rework.heatOn(saidHeated(event, spoken)));
    case 'heat-stopped':
      return event.ended === 'lost'
        ? null
        : cue(
            'heat-off',
            spoken.rework.heatOff(spoken.number(Math.min(999, Math.round(event.seconds)))),
          );
    case 'heat-limit-met':
      return event.stage === 'near'
        ? cue('heat-near', spoken.rework.near)
        : cue('heat-passed', spoken.rework.passed);
    case 'rework-logged':
      return cue('heard', spoken.rework.logged);
    case 'control-compared':
      return event.outcome === 'moved'
        ? cue('control-moved', spoken.rework.controlMoved(said(event.pin)))
        : null;
    case 'recheck-compared':
      return cue(
        event.outcome === 'good' ? 'recheck-good' : 'recheck-not-good',
        spoken.rework.outcome[event.outcome],
      );
    case 'press-begun':
      return cue('press-begun', spoken.pressBegun(said(event.pin), event.free === true));
    case 'press-compared':
      return comparedCue(event, state, spoken);
    case 'press-ended':
      return cue('press-ended', spoken.pressEnded(state.stage === 'walking' ? hereSaid : ''));
    case 'reading-returned':
      return cue('press-reads', spoken.pressReads);
    case 'reading-lost':
      return cue('press-lost', event.value === null ? spoken.pressOpen : spoken.pressOff);
    case 'press-traced':
      return cue(
        'press-traced',
        spoken.pressTraced(spoken.number(event.excursions.length), event.rests, event.repeats),
      );
    // A touch is heard as its verdict, or as the question whose it was; an answer as what follows from it.
    case 'reading-taken':
    case 'touch-captured':
    case 'pin-settled':
    // What counts now is heard as what follows from it.
    case 'reply-given':
    case 'probe-ended':
    case 'shift-estimated':
    case 'ready-left':
    case 'question-answered':
    case 'session-closed':
    case 'heat-cautions-confirmed':
    case 'power-checked':
    case 'function-tested':
    case 'job-closed':
      return null;
  }
};

const cue = (kind: CueKind, speech: string): Cue => ({
  kind,
  ...sheet[kind],
  speech: speakable(speech),
});

const judgedKind = ({ verdict, agreed, board }: EventOf<'pin-judged'>): CueKind => {
  if (agreed && verdict === 'normal' && board === 'donor') return 'donor-normal';
  if (agreed) return verdict;
  return verdict === 'normal' || verdict === 'unread' ? 'unsure-again' : `${verdict}-again`;
};

const saidHeated = (place: Place, spoken: SpokenWords): string =>
  saidPart(placeName(place), spoken) ?? '';

/** A part's name is spelled as a pin's is. */
const saidPart = (place: string | null, spoken: SpokenWords): string | null =>
  place === null ? null : spokenPin(place, spoken);

/** "FL3 pad 1": names are spelled, words of the language are not. */
const saidPlace = (id: string, spoken: SpokenWords): string =>
  id
    .split(' ')
    .map((word) => (/^[a-z]{3,12}$/u.test(word) ? word : spokenPin(word, spoken)))
    .join(' ');

const suspectCue = (
  { suspects: [first] }: EventOf<'suspects-ranked'>,
  spoken: SpokenWords,
): Cue | null => {
  if (first === undefined || first.probability <= 0.5) return null;
  if (first.where !== 'lead') return cue('suspect', spoken.suspect(saidPlace(first.id, spoken)));
  const { id } = first;
  return isLead(id) ? cue('ground-doubted', spoken.checkLead[id]) : null;
};

/** One place alone has nothing to be held against. */
const comparedCue = (
  { outcome, parts }: EventOf<'press-compared'>,
  { press, lastPress }: WalkState,
  spoken: SpokenWords,
): Cue | null => {
  const stage = press ?? lastPress?.stage;
  if (outcome === 'none' || (stage?.pressed.length ?? 0) < 2) return null;
  const said = parts.map((part) => spokenPin(part, spoken));
  return cue(
    outcome === 'all' ? 'press-all' : 'press-compared',
    spoken.pressCompared(outcome, said),
  );
};

const pressedKinds: Readonly<Record<PressFinding, CueKind>> = {
  loose: 'press-answers',
  cracked: 'press-answers',
  bridged: 'press-answers',
  'steady-open': 'press-nothing',
  steady: 'press-nothing',
  inconclusive: 'press-unclear',
};

const pausedKinds: Readonly<Record<EventOf<'walk-paused'>['reason'], CueKind>> = {
  asked: 'paused',
  'link-lost': 'link-lost',
  'meter-silent': 'meter-silent',
  'file-blocked': 'file-blocked',
};

const linkCue = ({ change }: EventOf<'link-changed'>, { spoken }: Words): Cue | null => {
  switch (change) {
    case 'opened':
      return null;
    case 'lost':
      return cue('link-lost', spoken.paused['link-lost']);
    case 'returned':
      return cue('link-back', spoken.linkBack);
    case 'silent':
      return cue('meter-silent', spoken.paused['meter-silent']);
    case 'failed':
      return cue('link-lost', spoken.linkFailed);
    case 'ended':
      return cue('readings-ended', spoken.readingsEnded);
  }
};
