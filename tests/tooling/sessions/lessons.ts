// The three recorded sessions. Everything in them happens on the virtual bench: board, meter and hands are
// simulated, and the notes say what a person should see and hear at that moment.
import { type Lesson, on } from './lesson.js';

const healthy: Lesson = {
  name: 'healthy-board',
  bench: 'healthy?seed=1&rate=10',
  pressTests: 'asked',
  notes: [
    {
      when: on('ground-touched', { which: 1 }),
      afterS: 0.3,
      text: 'One ground proves nothing: touch a second, separate one.',
    },
    {
      when: on('ground-checked'),
      afterS: 0.4,
      text: 'Two grounds agree: leads and clip are good. The walk begins.',
    },
    {
      when: on('pin-judged', { pin: '3' }),
      afterS: 0.4,
      pin: '3',
      text: 'Pins 2 and 3 are mates and read almost alike, as they should.',
    },
    {
      when: on('question-asked', { pin: '14' }),
      afterS: 0.5,
      pin: '14',
      text: 'Nothing is read here: air or a line without path? The walk asks.',
    },
    {
      when: on('pin-judged', { pin: '14' }),
      afterS: 0.5,
      pin: '14',
      text: 'A capacitor is in this line: overload is what a good board shows.',
    },
    {
      when: on('pin-reached', { pin: '26' }),
      afterS: 1.6,
      pin: '26',
      text: 'A rail charges through the meter and starts like a short. Wait.',
    },
    {
      when: on('pin-judged', { pin: '29' }),
      afterS: 0.5,
      pin: '29',
      text: 'A core rail may read a few ohms. Its own limit says what is short.',
    },
    {
      when: on('walk-finished'),
      afterS: 1,
      text: 'All normal, as seen from the connector. Keep it for comparison.',
    },
  ],
};

const looseFilter: Lesson = {
  name: 'loose-filter',
  bench: 'loose-filter?seed=1&rate=10',
  pressTests: 'each',
  notes: [
    {
      when: on('question-asked', { pin: '5' }),
      afterS: 0.5,
      pin: '5',
      text: 'Air and an open line read alike. Two taps on ground answer yes.',
    },
    {
      when: on('press-begun', { pin: '5' }),
      afterS: 0.5,
      pin: '5',
      text: 'Open. Keep the probe on it and press the parts along the line.',
    },
    {
      when: on('cue-given', { cue: 'press' }),
      afterS: 1.2,
      pin: '5',
      text: 'FL2 is pressed, and the reading is back. Once may be chance.',
    },
    {
      when: on('press-judged', { part: 'FL2' }),
      afterS: 0.5,
      pin: '5',
      text: 'It answers every time: a loose joint. Bare board is pressed next.',
    },
    {
      when: on('press-ended', { pin: '5' }),
      afterS: 0.3,
      pin: '5',
      text: 'Bare board changes nothing: it is FL2, not the board bending.',
    },
    {
      when: on('press-begun', { pin: '6' }),
      afterS: 0.5,
      pin: '6',
      text: 'Its mate is open too. Both run through FL2.',
    },
    {
      when: on('pin-judged', { pin: '7', verdict: 'normal' }),
      afterS: 0.4,
      pin: '7',
      text: 'Ground reads: the clip is on, so both opens are real.',
    },
    {
      when: on('walk-finished'),
      afterS: 1,
      text: 'Two opens, one part: rework FL2, then walk pins 2 to 9 again.',
    },
  ],
};

const shiftedLeaky: Lesson = {
  name: 'shifted-leaky',
  bench: 'shifted-leaky?seed=3&rate=10',
  pressTests: 'asked',
  notes: [
    {
      when: on('pin-judged', { pin: '3' }),
      afterS: 0.4,
      pin: '3',
      text: 'Inside the limits, yet both mates read high. Remember that.',
    },
    {
      when: on('pin-judged', { pin: '6' }),
      afterS: 0.4,
      pin: '6',
      text: 'Again high by the same share. It may be the meter, not the board.',
    },
    {
      when: on('pin-judged', { pin: '8' }),
      afterS: 0.6,
      pin: '8',
      text: 'No shift of a meter halves one line: something leaks to ground.',
    },
    {
      when: on('pin-judged', { pin: '9', verdict: 'normal' }),
      afterS: 0.4,
      pin: '9',
      text: 'Its mate reads like all the others: the leak is on pin 8 alone.',
    },
    {
      when: on('pin-judged', { pin: '32' }),
      afterS: 0.4,
      pin: '32',
      text: 'Another class of lines, the same share high: that is the meter.',
    },
    {
      when: on('walk-finished'),
      afterS: 1,
      text: 'One leaky line; the meter reads some 6 % high on all of them.',
    },
  ],
};

export const lessons: readonly Lesson[] = [healthy, looseFilter, shiftedLeaky];
