// The English catalogue.

import { shamPlace } from '../press/press-stage.js';
import { pinOnBoard } from '../profile/donor.js';
import type { Verdict } from '../verdict.js';
import { englishConfig } from './english-config.js';
import { englishContext } from './english-context.js';
import { englishDrill } from './english-drill.js';
import { englishGuide } from './english-guide.js';
import { englishHistory } from './english-history.js';
import { englishJob } from './english-job.js';
import { englishPads } from './english-pads.js';
import { englishProfile } from './english-profile.js';
import { englishRefusals } from './english-refusals.js';
import { englishReplay } from './english-replay.js';
import { englishRework } from './english-rework.js';
import { englishScreen } from './english-screen.js';
import { englishShare } from './english-share.js';
import { englishSpoken, padNames } from './english-spoken.js';
import { englishVerdicts } from './english-verdicts.js';
import type { Words } from './words.js';

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

export const english: Words = {
  language: 'en',
  drill: englishDrill,
  guide: englishGuide,
  config: englishConfig,
  share: englishShare,
  refusals: englishRefusals,
  history: englishHistory,
  context: englishContext,
  verdict: englishVerdicts,
  measure: {
    resistance: 'resistance to ground',
    diode: 'diode drop',
    continuity: 'continuity',
    'dc-volts': 'DC volts',
  },
  polarity: {
    'red-walks': 'red lead walks, black on ground',
    'black-walks': 'black lead walks, red on ground',
  },
  overload: 'overload',
  opened: (profile, measure, polarity) =>
    `${profile}: ${english.measure[measure]}, ${english.polarity[polarity]}`,
  simulated: 'Readings are simulated: this is the virtual bench, not a meter.',
  resumed: (pin, tornBytes) =>
    `Session taken up again${pin === null ? '' : ` at ${pinOnBoard(pin)}`}${
      tornBytes === 0 ? '' : `; ${count(tornBytes, 'byte')} of an unfinished line kept aside`
    }`,
  addedTo: 'The record of this session is added to.',
  closed: (tally, fingerprint) => `Session closed: ${tally}. Fingerprint ${fingerprint}`,
  savedIn: (file) => `Saved in ${file}`,
  goOnWith: (how, file) =>
    ({
      'half-way': `Next: pinwalk walk --resume ${file}`,
      findings: `Next: pinwalk rework ${file}, then pinwalk recheck ${file}; or pinwalk report ${file}`,
      normal: `Next: pinwalk report ${file}`,
    })[how],
  reportWritten: (file) => `Report written to ${file}`,
  touchGround: (which, ofBoards) => {
    if (ofBoards) return which === 1 ? 'Touch ground on the donor' : 'Now ground on the patient';
    return which === 1 ? 'Touch a ground pin' : 'Lift, then touch another ground pin';
  },
  groundTouched: (which, value) => `ground ${which} of 2: ${value}`,
  groundRepeated: 'That may be the same ground still. Lift for longer, then touch another.',
  groundMissed: (value) => `that is not ground: ${value}`,
  groundGood: 'Ground is good.',
  groundSkipped: 'Ground check left out.',
  groundDoubted: (opens) => `${opens} opens in a row: is the ground clip on?`,
  reached: (pin, line) => `Pin ${pin}, ${line}`,
  reachedOn: (board, pin, line) =>
    `${board === 'donor' ? 'Donor' : 'Patient'}: pin ${pin}, ${line}`,
  board: { donor: 'donor', patient: 'patient' },
  judged: (pin, line, value, word, sure, expected) =>
    `${pin} ${line}: ${value}, ${englishVerdicts[word]}${sure === '' ? '' : `, ${sure}`} (${expected})`,
  expectedOverload: 'overload expected',
  expectedBetween: (low, high) => `${low} to ${high} expected`,
  expectedNothing: 'nothing to compare with',
  touchAgain: 'Touch it again to confirm, or give "next".',
  question: (question, pin) => {
    switch (question) {
      case 'open':
        return `${pin}: open? Answer "open", or tap ground twice.`;
      case 'same-or-next':
        return `Still the pin before, or ${pin}? Lift and touch again, or give "next" for ${pin}.`;
      case 'shifted':
        return `The readings fit one place along better: check ${pinOnBoard(pin)}.`;
      case 'go-back':
        return `Not sure which board that was: touch ${pinOnBoard(pin)} again, then the same pin of the patient.`;
    }
  },
  answered: (question, pin) => (question === 'open' ? `${pin}: answered` : `${pin}: settled`),
  held: (_reason, detail) => `Held: ${detail}.`,
  freed: 'Reading again.',
  paused: (reason) => {
    switch (reason) {
      case 'asked':
        return 'Paused.';
      case 'link-lost':
        return 'Paused: the meter is gone; waiting for it to come back.';
      case 'meter-silent':
        return 'Paused: the meter is silent. Is it on, and is its output on?';
      case 'file-blocked':
        return 'Paused: the session file could not be written.';
    }
  },
  continued: (pin) => (pin === '' ? 'Going on.' : `Going on at ${pinOnBoard(pin)}.`),
  link: (change, detail) => {
    const because = detail === '' ? '' : `: ${detail}`;
    switch (change) {
      case 'opened':
        return `Link open${because}`;
      case 'lost':
        return `Link lost${because}`;
      case 'returned':
        return `Link back${because}`;
      case 'silent':
        return `Meter silent${because}`;
      case 'failed':
        return `Link failed${because}`;
      case 'ended':
        return 'No more readings.';
    }
  },
  refused: (act, reason) => `"${act}" is not possible now: ${reason}`,
  taken: (act, pin, text) =>
    act === 'note'
      ? `note${pin === '' ? '' : ` at ${pin}`}${text === '' ? ': this moment is marked' : `: ${text}`}`
      : pin === ''
        ? act
        : `${act} (${pin})`,
  reply: padNames,
  replyAsked: (reply) =>
    `Pad "${english.reply[reply]}" heard: it counts at the next pin; touch it again to undo.`,
  replyGiven: (reply) => `Pad "${english.reply[reply]}" counts.`,
  replyCancelled: (reply) => `Pad "${english.reply[reply]}" taken back.`,
  replyShadowed: (reply) =>
    `A line reads like the pad "${english.reply[reply]}": not listened to any more.`,
  realigned: (shift, pin) =>
    `Realigned: the walk was ${count(Math.abs(shift), 'place')} ${
      shift > 0 ? 'behind' : 'ahead'
    }; now at ${pinOnBoard(pin)}. Check the last pins.`,
  finished: (tally) => `All pins walked: ${tally}.`,
  tally: (counts) =>
    counts
      .map(([word, n]: readonly [Verdict, number]) => `${n} ${englishVerdicts[word]}`)
      .join(', ') || 'nothing read',
  meterSpoke: (says, text) => {
    switch (says) {
      case 'identity':
        return `Meter: ${text}`;
      case 'error':
        return `The meter reports an error: ${text}`;
      case 'no-answer':
        return `No answer: ${text}`;
    }
  },
  place: (place) => (place === shamPlace ? 'bare board' : (place ?? 'it')),
  pressJudged: (line, part, finding, cycles, chance) => {
    const it = english.place(part);
    const pressed = part === null ? 'pressing' : `pressing ${it}`;
    const says: Record<typeof finding, string> = {
      loose: `${line} reads again when ${it} is pressed: loose joint`,
      cracked: `${line} opens when ${it} is pressed: cracked joint`,
      bridged: `${line} shorts when ${it} is pressed: bridged`,
      'steady-open': `${line} stays open, ${pressed} changes nothing`,
      steady: `${line} stays as it is, ${pressed} changes nothing`,
      inconclusive: `${line}: ${pressed} gave no clear answer`,
    };
    return `${says[finding]} (${count(cycles, 'cycle')}, adjusted p ${chance}).`;
  },
  pressBegun: (pin, line, free) =>
    free
      ? `Free press test of ${line}: hold the probe on pin ${pin}, press when you like, lightly, with an insulated tool.`
      : `Press test of ${line}: hold the probe on pin ${pin}.`,
  readingTurned: (line, reads, value) =>
    reads
      ? `${line} reads ${value ?? ''}`
      : `${line} ${value === null ? 'is open' : `reads ${value}: not its own`}`,
  pressTraced: (line, { rests, times, dwellS, repeats, marked }) => {
    if (rests === null) return `${line}: nothing was read.`;
    const rest = rests === 'none' ? 'rests open, came back' : 'rests at its reading, was lost';
    const dwell = dwellS === null ? '' : ` (${dwellS.toFixed(1)} s as a rule)`;
    const alike = repeats ? ', alike each time' : '';
    const held =
      marked === null
        ? ''
        : ` ${marked.away} of ${marked.presses} marked presses answered, ${marked.between} between them (p ${marked.chance}).`;
    return `${line} ${rest} ${count(times, 'time')}${dwell}${alike}.${held}`;
  },
  pressMoved: (place, sham) => {
    if (sham) return 'Next: press on bare board beside the part, for comparison.';
    return `Next: press ${place ?? 'the part you suspect'}, lightly, with an insulated tool.`;
  },
  cueGiven: (cue, place) => (cue === 'press' ? `press ${english.place(place)}` : 'release'),
  pressCompared: (line, outcome, parts) => {
    switch (outcome) {
      case 'one':
        return `${line}: ${parts} answers most.`;
      case 'tied':
        return `${line}: ${parts} answer alike; press them again.`;
      case 'all':
        return `${line}: every place answers, bare board too: the board flexes or the pin joint moves.`;
      case 'none':
        return `${line}: no place answers to pressing.`;
    }
  },
  suspects: (places) =>
    places.length === 0
      ? 'No joint or part stands out.'
      : `Suspects: ${places.map(([place, percent]) => `${place} ${percent} %`).join(', ')}.`,
  suspect: (where, id) =>
    where === 'lead' && id === 'ground-clip'
      ? 'the ground clip'
      : where === 'lead' && id === 'walking-lead'
        ? 'the walking lead'
        : id,
  checkLead: (lead) => `Too much is open at once: look at ${lead} first.`,
  chain: (line, places) =>
    `Along ${line}: ${places.map(([place, percent]) => `${place} ${percent} %`).join(', ')}.`,
  nextProbe: ({ probe, line, pin, part, side }) => {
    switch (probe) {
      case 'retake':
        return `Next best: touch pin ${pin} again.`;
      case 'other-ground':
        return `Next best: clip to another ground, then touch pin ${pin} again.`;
      case 'place':
        return `Next best: probe ${english.probePlace(line, part ?? null, side ?? 'chip')}.`;
      case 'press':
        return `Next best: a press test of ${part} on pin ${pin}.`;
    }
  },
  probeBegun: ({ probe }, place) =>
    probe === 'other-ground'
      ? `Probe: clip to another ground, then touch ${place}. The walk waits.`
      : `Probe: lift, then touch ${place}. The walk waits.`,
  placeJudged: (place, value, word, expected) =>
    `${place}: ${value}, ${englishVerdicts[word]} (${expected})`,
  probeGivenUp: 'Probe given up.',
  pinName: pinOnBoard,
  pinPlace: (pin, line) => `pin ${pin}, ${line}`,
  probePlace: (line, part, side) =>
    side === 'chip' ? `${line} at the chip` : `${part} ${side} side, ${line}`,
  pressTests: (places) =>
    places === 0 ? 'a press test' : `a press test of ${count(places, 'place')}`,
  pressEnded: (reason) => (reason === 'done' ? 'Press test done.' : 'Press test ended.'),
  assumedAccuracy:
    'Accuracy not told: 0.5 % of reading + 3 counts of 6,000 assumed; --accuracy and --counts set it.',
  verdictChanged: (pin, line, before, now) => `${pin} ${line}: ${before} becomes ${now}`,
  verdictsChanged: (n) => (n === 0 ? 'No verdict changes.' : `${count(n, 'verdict')} changed.`),
  file: (change, detail) =>
    change === 'blocked'
      ? `Session file not written: ${detail}. Nothing is taken in until it can be.`
      : 'Session file written again.',
  screen: englishScreen,
  replay: englishReplay,
  pads: englishPads,
  rework: englishRework,
  spoken: englishSpoken,
  job: englishJob,
  profile: englishProfile,
};
