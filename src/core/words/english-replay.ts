// The English of replay.
import type { WaymarkKind } from '../replay/waymark.js';
import type { LogAccuracy, ReplayWords } from './replay-words.js';

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const accuracyOptions = (accuracy: LogAccuracy): string => {
  if (accuracy === null) return '';
  if ('driver' in accuracy) return ` --driver ${accuracy.driver}`;
  const { percent, counts, fullScaleCounts } = accuracy;
  return ` --accuracy ${percent},${counts} --counts ${fullScaleCounts}`;
};

const kinds: Readonly<Record<Exclude<WaymarkKind, 'verdict'>, string>> = {
  question: 'question',
  link: 'meter lost',
  held: 'held',
  ground: 'ground',
  realigned: 'realigned',
  press: 'press test',
  note: 'note',
};

export const englishReplay: ReplayWords = {
  key: {
    pause: 'pause',
    'next-waymark': 'next find',
    'previous-waymark': 'last find',
    ahead: '+5 s',
    back: '-5 s',
    faster: 'faster',
    slower: 'slower',
    'step-on': 'step',
    'step-back': 'step back',
    start: 'start',
    end: 'end',
    'go-to': 'go to',
    repeat: 'say again',
    review: 'review',
    keys: 'keys',
    quit: 'quit',
  },
  keyMeans: {
    pause: 'pause, and go on',
    'next-waymark': 'to the next find, question or note',
    'previous-waymark': 'to the one before',
    ahead: 'five seconds ahead',
    back: 'five seconds back',
    faster: 'play faster, up to 50 times',
    slower: 'play slower, down to a quarter',
    'step-on': 'one event on, and pause there',
    'step-back': 'one event back, and pause there',
    start: 'to the start',
    end: 'to the end',
    'go-to': 'go to a time or a pin',
    repeat: 'say the last thing again',
    review: 'list what is not normal so far; enter goes there',
    keys: 'this page',
    quit: 'leave; the file stays as it is',
  },
  goOn: 'go on',
  title: 'REPLAY',
  paused: 'paused',
  ended: 'at its end',
  speed: (factor) => `${factor}x`,
  next: (kind, pin, verdict, inTime) => {
    const what = kind === 'verdict' && verdict !== null ? verdict : kinds[kind as 'note'];
    return `${pin === null ? what : `${pin} ${what}`} in ${inTime}`;
  },
  nothingNext: 'nothing more to find',
  goTo: 'Go to time or pin',
  noGoal: (typed) => `"${typed}" is no time (1:35) and no pin`,
  torn: (bytes) =>
    `The last event was never finished; ${count(bytes, 'byte')} of it are not played.`,
  neverReached: (pin) => `the walk never reaches pin ${pin} in this session`,
  notInLog: ({ groundCheck, paused, pressTests, probes, notes, gaps, jumpsAhead }) => [
    ...(groundCheck === 0
      ? []
      : [
          `Left out: ${count(groundCheck, 'reading')} of the ground check; a log begins with the first pin.`,
        ]),
    ...(paused === 0
      ? []
      : [`Left out: ${count(paused, 'reading')} taken while the walk was paused.`]),
    ...(pressTests === 0
      ? []
      : [`Left out: ${count(pressTests, 'press test')}; --press LINE writes those of a line.`]),
    ...(probes === 0
      ? []
      : [`Left out: ${count(probes, 'reading')} of places probed beside the walk.`]),
    ...(notes === 0 ? [] : [`Left out: ${count(notes, 'note')}; a log has no mark for them.`]),
    ...(gaps === 0
      ? []
      : [
          `${count(gaps, 'time')} the meter was gone or the session taken up again; a log shows only the gap.`,
        ]),
    ...(jumpsAhead === 0
      ? []
      : [
          `${count(jumpsAhead, 'jump')} ahead written as skips; pins read before and jumped over come out unread.`,
        ]),
  ],
  noPressTest: (line, part) =>
    `there is no press test of ${line}${part === null ? '' : ` at ${part}`} in this session`,
  rerunPressLog: (profile, line, part) =>
    `Judge it again: pinwalk rerun LOG --profile ${profile} --press ${line}${
      part === null ? '' : ` --part ${part}`
    }`,
  rerunLog: (profile, accuracy) =>
    `Walk it again: pinwalk rerun LOG --profile ${profile}${accuracyOptions(accuracy)}`,
};
