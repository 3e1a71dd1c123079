// The English of the reply pads.
import type { PadWords } from './pad-words.js';

export const englishPads: PadWords = {
  does: {
    open: 'answers that the line reads nothing, and goes on to the next pin',
    back: 'goes one pin back',
    next: 'takes the reading as it is, and goes on',
    skip: 'leaves the pin unread, and goes on',
    'press-test': 'begins a press test on the line read last',
    note: 'marks this moment in the session file',
    'repeat-cue': 'says again what was said last',
  },
  columns: { pad: 'pad', resistor: 'resistor', reads: 'reads', does: 'touched twice it' },
  between: (low, high) => `${low} to ${high}`,
  distance: (percent) =>
    `Every pad reads at least ${percent} % away from the next, and from all this profile may read.`,
  build: [
    'Build: solder one end of each resistor to a bare piece of copper, the other ends side by side, a finger apart, each with a blob of solder to touch.',
    'Clip the copper to the same ground as the meter, and lay the board where the walking probe reaches it without a look.',
    'Learn: pinwalk pads learn, with your meter, in the function and range of the walk.',
    'Use: touch a pad twice, half a second each, half a second apart. It is said aloud at once and counts when you read the next pin, or after a while in the air.',
    'Take back: touch the same pad once more, or press the key for "dismiss". One touch, or one that is held, is never a command and never a pin.',
  ],
  learning: (measure, count) =>
    `Learning ${count} reply ${count === 1 ? 'pad' : 'pads'} in ${measure}: touch each once, hold it until it is said, then lift.`,
  wanted: (command, at, of) => `${at} of ${of}: touch the pad "${command}".`,
  learned: (command, value) => `"${command}" reads ${value}. Lift.`,
  refused: (command, what) => `Not taken for "${command}": ${what}. Lift.`,
  saved: (file, count) => `${count} reply ${count === 1 ? 'pad' : 'pads'} saved in ${file}.`,
  ended: 'The readings ended before every pad was touched; nothing was saved.',
  otherFunction: (learnedIn, walked) =>
    `Reply pads are not listened to: they were learned in ${learnedIn}, the walk measures ${walked}.`,
  leftOut: (command, why) => `Reply pad "${command}" is left out: ${why}.`,
  note: (text) => `Note: ${text}.`,
};
