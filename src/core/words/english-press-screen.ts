// The English of the press view.
import type { PressScreenWords } from './press-screen-words.js';

const bareBoard = 'bare board';

export const englishPressScreen: PressScreenWords = {
  title: 'Press test',
  large: {
    press: 'PRESS',
    release: 'RELEASE',
    holdStill: 'HOLD STILL',
    hold: 'HOLD',
    reads: 'READS',
    open: 'OPEN',
    done: 'DONE',
  },
  findingLarge: {
    loose: 'LOOSE',
    cracked: 'CRACKED',
    bridged: 'BRIDGED',
    'steady-open': 'STAYS OPEN',
    steady: 'STEADY',
    inconclusive: 'UNCLEAR',
  },
  cue: { press: 'press', release: 'release' },
  shown: {
    normal: 'reads',
    open: 'open',
    high: 'high',
    short: 'short',
    low: 'low',
    unclear: 'unclear',
  },
  pressed: 'pressed',
  released: 'released',
  under: (place, sham) =>
    sham ? `${bareBoard}, beside the part` : (place ?? 'the place you suspect'),
  place: (place, sham) => (sham ? bareBoard : (place ?? 'the place')),
  changed: (times) => `changed ${times === 1 ? 'once' : `${times} times`}`,
  freeTitle: 'Free press test',
  pressingKey: 'pressing',
  releasedKey: 'released',
  endKey: 'end the test',
  placeOf: (nth, of) => `place ${nth} of ${of}`,
  cycle: (n, fewest, most) => `cycle ${n}, decided after ${fewest} to ${most}`,
  cycleShort: (n) => `cycle ${n}`,
  now: 'now',
  next: 'next',
  finding: (finding) => (finding === 'steady-open' ? 'stays open' : finding),
  says: (finding, place, sham) => {
    const it = englishPressScreen.place(place, sham);
    switch (finding) {
      case 'loose':
        return `reading returns when ${it} is pressed: ${sham ? 'the board flexes' : 'loose joint'}`;
      case 'cracked':
        return `reading is lost when ${it} is pressed: ${sham ? 'the board flexes' : 'cracked joint'}`;
      case 'bridged':
        return `a short comes or goes when ${it} is pressed: ${sham ? 'the board flexes' : 'bridged'}`;
      case 'steady-open':
        return `stays open whether ${it} is pressed or not`;
      case 'steady':
        return `stays as it is whether ${it} is pressed or not`;
      case 'inconclusive':
        return `no clear answer from ${it}`;
    }
  },
  chance: (raw, adjusted) => `p ${raw}, adjusted ${adjusted}`,
  compared: (outcome, parts) => {
    switch (outcome) {
      case 'one':
        return parts === '' ? 'that place answers' : `${parts} answers most`;
      case 'tied':
        return `${parts} answer alike; press them again`;
      case 'all':
        return 'all answer: the board flexes or the pin joint moves';
      case 'none':
        return 'no place answers';
    }
  },
};
