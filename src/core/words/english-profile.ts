// Beginning and growing a profile in English.
import type { ProfileWords } from './profile-words.js';

export const englishProfile: ProfileWords = {
  askTitle: 'What is the connector called? ',
  untitled: 'Untitled connector',
  askPins: 'How many pins? ',
  noCount: (given) => `"${given}" is no number of pins from 1 to 2000.`,
  askRows: 'In how many rows, 1 or 2? (Enter: 2) ',
  askNumbering: 'Numbered 1 row after row, 2 odd and even apart, 3 around? (Enter: 1) ',
  askGrounds: 'Ground pins, such as 1,4,10-12 (Enter: none): ',
  askSupplies: 'Supply pins (Enter: none): ',
  askNames: 'Names of the lines, by pin number with commas (Enter: PIN_1,PIN_2 …): ',
  ground: 'ground',
  supply: 'supply',
  noPin: (pin, of) => `There is no pin ${pin} of ${of}.`,
  taken: (pin, kind) => `Pin ${pin} is ${kind} already.`,
  tooManyNames: (names, pins) => `${names} names for ${pins} pins.`,
  noName: (given) => `"${given}" is no name of a line: letters, digits and . + # / ~ - _ only.`,
  begun: (id, pins, file) => `Profile ${id}, ${pins} pins, written to ${file}`,
  next: (file) =>
    `Next: walk a good board with --profile ${file}, then \`pinwalk profile grow SESSION --out NEW.json\`.`,
  grown: (lines, of, file) => `Expected values of ${lines} of ${of} lines written to ${file}`,
  oneBoard:
    'From one good board: it shows what that board read, not how much good boards differ. The tolerances are the usual ones; `pinwalk learn` does better with five boards or more.',
  simulated: 'Readings were simulated: the profile is marked as demo.',
};
