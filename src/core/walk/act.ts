// What the technician's acts do to the walk's place. Acts are not in doubt: they hold for every way at once.
import type { EventOf } from '../events.js';
import type { ActName } from '../inputs.js';
import { pinOnBoard } from '../profile/donor.js';
import { type Contact, consumeTouch, reopenTouch } from './contact.js';
import { askedReply } from './pad-ear.js';
import { readyRefusal } from './ready-refusal.js';
import { agreesToShift, asksForPlace, saysItIsRight, saysNext, saysShifted } from './said.js';
import type { WalkState } from './state.js';
import { moveAll, placeAt, waitsFor, weighWays } from './ways.js';
import { indexOfPin, likeliestWay, pinReadLast } from './whereabouts.js';

/** What may be done while the tool is on the board. */
const duringPress: ReadonlySet<ActName> = new Set([
  'press',
  'dismiss',
  'note',
  'pause',
  'resume',
  'pressing',
  'released',
  'quit',
]);

/** What may be done while a place is probed beside the walk. */
const duringProbe: ReadonlySet<ActName> = new Set([
  'open',
  'probe',
  'dismiss',
  'note',
  'pause',
  'resume',
  'quit',
]);

/** What may be done while the leads are tried. */
const duringReady: ReadonlySet<ActName> = new Set([
  'zero',
  'reference',
  'skip',
  'note',
  'pause',
  'resume',
  'quit',
]);

/** Contact for longer than this, seconds, is no brush on the way. */
const longestBrushS = 0.3;

/** Why an act cannot be carried out now, in words, or null when it can. */
export const refusal = (state: WalkState, act: ActName, pin: string | undefined): string | null => {
  const here = state.plan.pins[state.cursor]?.pin;
  const { touch, rest } = state.contact;
  if (state.press !== null && !duringPress.has(act)) {
    return 'a press test is under way; dismiss ends it';
  }
  if (state.probing !== null && !duringProbe.has(act)) {
    return 'a place is being probed; dismiss ends it';
  }
  if (state.alone !== null && !duringPress.has(act)) {
    return 'this session is a press test alone; there is no pin to walk';
  }
  if (state.ready !== null && !duringReady.has(act)) {
    return 'the leads are being tried first; skip leaves that out';
  }
  switch (act) {
    case 'zero':
      return readyRefusal(state, 'lead-zero');
    case 'reference':
      return readyRefusal(state, 'reference');
    case 'open':
      if (state.stage === 'ground-check')
        return 'two grounds are touched first; skip leaves that out';
      if (here === undefined && state.probing === null) return 'every pin has been walked';
      if (rest !== null) return 'the probe still rests on the pin before; lift it first';
      if (touch !== null && touch.creep.lastT - touch.since > longestBrushS)
        return state.probing === null
          ? `${pinOnBoard(here ?? '')} shows a reading; skip leaves it unread`
          : 'there is a reading; hold the probe still';
      return null;
    case 'next':
      if (state.stage === 'ground-check')
        return 'two grounds are touched first; skip leaves that out';
      if (
        likeliestWay(state).stage === 'confirming' ||
        asksForPlace(state) ||
        agreesToShift(state, 'next')
      ) {
        return null;
      }
      return here === undefined
        ? 'every pin has been walked'
        : `nothing is read at ${pinOnBoard(here)} yet; skip leaves it unread`;
    case 'skip':
      return here === undefined ? 'every pin has been walked' : null;
    case 'back':
      return state.cursor === 0 && !agreesToShift(state, 'back') ? 'this is the first pin' : null;
    case 'go-to':
      return pin !== undefined && indexOfPin(state, pin) >= 0
        ? null
        : `there is no pin ${pin ?? ''} in this profile`;
    case 'resume':
      return state.paused === 'asked' ? null : 'the walk is not paused';
    case 'pause':
      return state.paused === null ? null : 'the walk is paused already';
    case 'dismiss':
      return state.question === null &&
        state.press === null &&
        state.probing === null &&
        askedReply(state) === null
        ? 'there is nothing to dismiss'
        : null;
    case 'press':
      if (state.press !== null) return 'a press test is under way';
      if (pinReadLast(state)?.board === 'donor') {
        return 'the donor was read last; press tests are made on the patient';
      }
      return state.alone === null && pinReadLast(state) === undefined
        ? 'no pin has been read yet'
        : null;
    case 'probe':
    case 'retake':
    case 'note':
    case 'pressing':
    case 'released':
    case 'quit':
      return null;
  }
};

export const applyAct = (state: WalkState, { act, pin, by }: EventOf<'act-taken'>): WalkState => {
  // After a reply the probe is where the reply sent it; a key is pressed wherever the probe may be.
  const contact = by === 'pad' ? state.contact : consumeTouch(state.contact);
  switch (act) {
    case 'next':
      if (agreesToShift(state, 'next')) return shifted(state);
      return {
        ...state,
        latest: null,
        contact,
        alignment: moveAll(weighWays(state.alignment, saysNext(state)), (way) => ({
          ...way,
          stage: 'done',
        })),
      };
    case 'skip':
      if (state.stage === 'ground-check' || state.ready !== null) return state;
      return {
        ...state,
        latest: null,
        contact,
        alignment: moveAll(state.alignment, (way) => ({
          ...way,
          index: waitsFor(way),
          stage: 'done',
          doubt: 0,
          value: null,
          deviation: 0,
          led: null,
        })),
      };
    case 'back':
      return agreesToShift(state, 'back')
        ? shifted(state)
        : goTo(state, contact, Math.min(state.cursor, state.plan.pins.length) - 1);
    case 'go-to':
      return goTo(state, contact, indexOfPin(state, pin ?? ''));
    case 'retake': {
      const { index } = likeliestWay(state);
      return goTo(state, reopenTouch(state.contact), index);
    }
    case 'open':
    case 'press':
    case 'probe':
    case 'zero':
    case 'reference':
    case 'note':
    case 'pause':
    case 'resume':
    case 'pressing':
    case 'released':
    case 'quit':
      return state;
    case 'dismiss':
      return state.question?.question === 'shifted'
        ? { ...state, alignment: weighWays(state.alignment, saysItIsRight(state)) }
        : state;
  }
};

const shifted = (state: WalkState): WalkState => ({
  ...state,
  latest: null,
  alignment: weighWays(state.alignment, saysShifted(state)),
});

const goTo = (state: WalkState, contact: Contact, index: number): WalkState => ({
  ...state,
  latest: null,
  contact,
  alignment: placeAt(state.alignment, index),
  pending: [],
});
