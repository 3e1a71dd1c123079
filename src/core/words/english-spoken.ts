// The English of the cues.

import type { ProbeSide } from '../inputs.js';
import type { PadCommand } from '../pads/pad.js';
import { englishSpokenRework } from './english-rework.js';
import type { SpokenWords } from './spoken-words.js';

export const padNames: Readonly<Record<PadCommand, string>> = {
  open: 'open',
  back: 'back',
  next: 'next',
  skip: 'skip',
  'press-test': 'press test',
  note: 'note',
  'repeat-cue': 'say again',
};

const small = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'],
  ...['eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen'],
  'nineteen',
];
const tens = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

const number = (n: number): string => {
  if (n < 20) return small[n] ?? '';
  const rest = n % (n < 100 ? 10 : 100);
  const head = n < 100 ? tens[Math.floor(n / 10) - 2] : `${number(Math.floor(n / 100))} hundred`;
  return rest === 0 ? `${head}` : `${head}${n < 100 ? '-' : ' and '}${number(rest)}`;
};

const spokenPlace = (part: string | null, side: ProbeSide): string =>
  part === null || side === 'chip' ? 'at the chip' : `${part} ${side} side`;

export const englishSpoken: SpokenWords = {
  number,
  sign: {
    '.': 'dot',
    '+': 'plus',
    '-': 'minus',
    '#': 'number',
    '/': 'slash',
    '~': 'tilde',
    _: 'underscore',
  },
  somePin: 'this pin',
  judged: (pin, verdict, agreed) => `${pin}, ${verdict}${agreed ? '' : '; again'}`,
  question: (question, pin) => {
    switch (question) {
      case 'open':
        return `${pin}: open?`;
      case 'same-or-next':
        return `same pin, or ${pin}?`;
      case 'shifted':
        return `shifted? check ${pin}`;
      case 'go-back':
        return `not sure: touch ${pin} again`;
    }
  },
  touchGround: 'touch ground',
  donor: {
    touchGround: 'touch ground on the donor',
    groundFirst: 'ground; now ground on the patient',
    pin: (board, pin) => `${board} ${pin}`,
  },
  groundFirst: 'ground; now another ground',
  groundRepeated: 'same ground? lift longer',
  groundMissed: 'not ground',
  groundGood: (pin) => `ground is good; ${pin}`,
  groundSkipped: (pin) => `no ground check; ${pin}`,
  groundDoubted: (opens) => `${opens} opens in a row: is the ground clip on?`,
  place: (pin) => pin,
  held: {
    'flag-hold': 'held: meter is on hold',
    'flag-relative': 'held: meter is on relative',
    'flag-minmax': 'held: meter is on min max',
    'frozen-display': 'held: display stands still',
    'wrong-function': 'held: wrong function',
    negative: 'held: negative; discharge the line',
    'ground-lost': 'ground lead off',
  },
  freed: 'reading again',
  paused: {
    asked: 'paused',
    'link-lost': 'meter gone',
    'meter-silent': 'meter silent',
    'file-blocked': 'file not written',
  },
  continued: (pin) => (pin === '' ? 'going on' : `going on at ${pin}`),
  linkBack: 'meter back',
  linkFailed: 'no meter',
  readingsEnded: 'no more readings',
  meterError: 'meter error',
  fileWritten: 'file written again',
  realigned: (pin) => `realigned: now at ${pin}; check the last pins`,
  finished: (counts) =>
    `all pins walked: ${counts.map(([count, verdict]) => `${count} ${verdict}`).join(', ')}`,
  refused: (reason) => `not now: ${reason}`,
  act: {
    open: 'open',
    back: 'back',
    next: 'next',
    skip: 'skip',
    retake: 'retake',
    'go-to': 'go to',
    note: 'noted',
    pause: 'pause',
    resume: 'resume',
    dismiss: 'not asked again',
    press: 'press test',
    probe: 'probe',
    pressing: 'pressing',
    released: 'released',
    zero: 'zero the leads',
    reference: 'reference',
    quit: 'quit',
  },
  readyAsked: { 'lead-zero': 'hold the probe tips together', reference: 'touch the reference' },
  leadZeroed: 'leads zeroed',
  leadZeroRefused: 'leads not zeroed',
  referenceGood: 'reference good',
  referenceBad: 'the meter is off',
  replyAsked: (reply) => `pad ${padNames[reply]}`,
  replyCancelled: (reply) => `${padNames[reply]} taken back`,
  replyShadowed: (reply) => `pad ${padNames[reply]} is off: a line reads like it`,
  cue: { press: 'press', release: 'release' },
  pressPlace: (place, sham) =>
    sham ? 'next: bare board, beside the part' : `next: press ${place ?? 'the part you suspect'}`,
  pressBegun: (pin, free) =>
    free ? `press when you like; hold ${pin}` : `press test; hold the probe on ${pin}`,
  pressCompared: (outcome, parts) => {
    switch (outcome) {
      case 'one':
        return parts.length === 0 ? 'that place answers' : `${parts.join(', ')} answers most`;
      case 'tied':
        return `${parts.join(' and ')} answer alike; press again`;
      case 'all':
        return 'all answer: the board flexes or the pin joint moves';
    }
  },
  pressEnded: (pin) => (pin === '' ? 'press test done' : `on to ${pin}`),
  pressReads: 'reads',
  pressOpen: 'open',
  pressOff: 'off',
  pressTraced: (changes, rests, repeats) => {
    if (rests === null) return 'nothing was read';
    const what = rests === 'none' ? 'came back' : 'went away';
    return `it ${what} ${changes} times${repeats ? ', alike each time' : ''}`;
  },
  pressFinding: (finding) => {
    switch (finding) {
      case 'loose':
        return 'it reads again: loose joint';
      case 'cracked':
        return 'it opens: cracked joint';
      case 'bridged':
        return 'it shorts: bridged';
      case 'steady-open':
        return 'stays open';
      case 'steady':
        return 'stays as it is';
      case 'inconclusive':
        return 'no clear answer';
    }
  },
  probePlace: ({ part, side, pin }) =>
    pin !== null ? `again: ${pin}` : `probe ${spokenPlace(part, side)}`,
  placeJudged: (part, side, verdict) => `${spokenPlace(part, side)}, ${verdict}`,
  placeOpen: (part, side) => `${spokenPlace(part, side)}: open?`,
  suspect: (place) => `suspect: ${place}`,
  checkLead: {
    'ground-clip': 'look at the ground clip first',
    'walking-lead': 'look at the walking lead first',
  },
  rework: englishSpokenRework,
  unable: {
    noPlayer: 'No sound player works here: cues are the terminal bell.',
    playerFailed: 'The sound player failed: cues are the terminal bell from now on.',
    noVoice: 'No speech synthesiser works here: cues are tones. espeak-ng would do.',
    voiceFailed: 'The speech synthesiser failed: cues are tones from now on.',
  },
};
