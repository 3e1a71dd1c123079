// The English of rework, recheck and closing.
import type { ReworkWords, SpokenRework } from './rework-words.js';

const of = (seconds: string, allowed: string | null): string =>
  allowed === null ? seconds : `${seconds} of ${allowed}`;

const inParentheses = (setting: string): string => (setting === '' ? '' : ` (${setting})`);

export const englishRework: ReworkWords = {
  action: {
    reflow: 'reflowed',
    resolder: 'soldered again',
    replace: 'replaced',
    remove: 'removed',
    fit: 'fitted',
    wire: 'bridged by a wire',
    clean: 'cleaned',
    inspect: 'inspected',
    other: 'worked on',
  },
  tool: {
    'hot-air': 'hot air',
    iron: 'iron',
    tweezers: 'hot tweezers',
    infrared: 'infrared',
    preheater: 'preheater',
    other: 'other tool',
  },
  caution: {
    battery: 'Battery, charger, USB and coin cell are off the board before any heat.',
    cells: 'Stop at a swollen or damaged lithium cell: heat can set it on fire.',
    air: 'Hot air and tips burn; draw off fumes, wear glasses, keep what burns away.',
    esd: 'Wrist strap on, mat grounded, station earthed.',
    sheets:
      'Local codes and the data sheets of solder, flux and parts come before anything said here.',
  },
  place: (name) => name ?? 'an unnamed place',
  seconds: (seconds) => `${seconds < 10 ? seconds.toFixed(1) : seconds.toFixed(0)} s`,
  setPoint: (celsius) => `${celsius} °C`,
  airflow: (scale) => `air ${scale}`,
  confirmed: 'Cautions before heat confirmed.',
  heatStarted: (place, setting) => `Heat on: ${place}${inParentheses(setting)}`,
  heatStopped: (place, seconds, lost) =>
    lost
      ? `Heat on ${place}: at least ${seconds}; the program ended while it was on`
      : `Heat off: ${place}, ${seconds}`,
  limitMet: ({ stage, limit, seconds, allowed }, where) => {
    const what = limit === 'run' ? 'one run' : 'all heat';
    return stage === 'near'
      ? `${where}: ${englishRework.seconds(seconds)} of ${englishRework.seconds(allowed)} for ${what}`
      : `${where}: past ${englishRework.seconds(allowed)} for ${what}, now ${englishRework.seconds(seconds)}. Take heat away.`;
  },
  logged: (action, place, setting, note) =>
    `${place}: ${englishRework.action[action]}${inParentheses(setting)}${note === '' ? '' : `: ${note}`}`,
  setPointOver: (setPoint, allowed) =>
    `The set-point ${setPoint} is over the ${allowed} the limits allow here.`,
  refused: {
    cautions: 'Confirm the cautions first.',
    'heat-is-on': 'Heat is on already; stop it first.',
    'heat-is-off': 'Heat is not on.',
  },
  noLimits: 'No limit is known for this place: the data sheets count.',
  toWalk: (pin, line, before, because) => {
    const says = {
      bad: 'not normal before',
      mate: 'mate of a bad line',
      part: 'through a reworked part',
      heat: 'near heat',
      supply: 'supply line',
      control: 'not touched, must read as before',
      anchor: 'ground on the way',
    } as const;
    return `${pin} ${line}: ${before}; ${because.map((reason) => says[reason]).join(', ')}`;
  },
  controlMoved: (pin, line) =>
    `${pin} ${line} was not touched and reads otherwise than before: the board is warm or wet. Wait, then touch it again.`,
  controlAsBefore: (pin, line) => `${pin} ${line} was not touched and reads as before.`,
  outcome: {
    good: 'Recheck: good. What was bad reads well, nothing else has changed for the worse.',
    wait: 'Recheck: wait. Untouched lines read otherwise than before: let the board cool and dry, then walk it again.',
    bad: 'Recheck: not good. Something is still bad, newly bad, or moves under pressure.',
    incomplete:
      'Recheck: not complete. Something in question was not read or pressed again, or no untouched line was read before and after to compare with.',
  },
  compared: (pin, line, before, after, is) => {
    const says = {
      changed: 'changed',
      unchanged: 'unchanged',
      'newly-bad': 'newly bad',
      unknown: 'cannot be compared',
    } as const;
    return `${pin} ${line}: ${before}, now ${after}: ${says[is]}`;
  },
  powerChecked: ({ volts, amperes, limit, draw }) => {
    const says = {
      'as-expected': 'as expected',
      'too-high': 'too high',
      'too-low': 'too low',
      'not-known': 'not known to be right or wrong',
    } as const;
    const read = [
      ...(amperes === undefined ? [] : [`${amperes} A`]),
      ...(volts === undefined ? [] : [`at ${volts} V`]),
      ...(limit === undefined ? [] : [`limited to ${limit} A`]),
    ].join(' ');
    return `Draw on the bench supply: ${read === '' ? '' : `${read}, `}${says[draw]}`;
  },
  functionTested: ({ tested, works }) => {
    const says = { yes: 'works', partly: 'works in part', no: 'does not work' } as const;
    return `Function test: ${tested}: ${says[works]}`;
  },
  jobClosed: (as, reason) => {
    const says = {
      repaired: 'repaired',
      'partly-repaired': 'repaired in part',
      'not-repaired': 'not repaired',
      returned: 'returned without repair',
    } as const;
    return `Job closed: ${says[as]}${reason === '' ? '' : `: ${reason}`}`;
  },
  doubt: {
    'no-recheck': 'there is no recheck of this session that came to an end',
    'before-rework': 'the last recheck is older than the last rework',
    wait: 'at the last recheck untouched lines had moved: the board was warm or wet',
    bad: 'the last recheck was not good',
    incomplete: 'the last recheck is not complete',
  },
  firstPower:
    'First power-up on a current-limited supply, before the battery: start low and watch the draw. Check the supply lines for shorts first.',
  screen: {
    title: 'Rework',
    confirm: 'Enter: all of this is so',
    taller: 'and more: make the window taller to read them',
    place: 'place',
    tool: 'tool',
    setPoint: 'set-point',
    airflow: 'airflow',
    action: 'action',
    heatOn: 'HEAT ON',
    heatOff: 'heat off',
    run: (seconds, allowed) => `this run ${of(seconds, allowed)}`,
    total: (where, seconds, allowed) => `${where}: ${of(seconds, allowed)} in all`,
    near: 'nearly at the limit',
    passed: 'past the limit: take heat away',
    done: 'done so far',
    nothing: 'nothing yet',
    typePlace: 'Part or area: ',
    typeSetPoint: 'Set-point in degrees C: ',
    typeAirflow: 'Airflow as the station shows it: ',
    typeNote: 'Note: ',
    notNumber: 'write a number',
    quitting: 'Heat is on: stop it first.',
    keys: (heat, next, note, quit) => [
      `${heat} heat on/off`,
      `${next} next part`,
      'a area',
      'x action',
      'm tool',
      'e set-point',
      'f airflow',
      'l log',
      `${note} note`,
      `${quit} quit`,
    ],
  },
  lines: {
    hint: 'One a line: confirm, heat PLACE, stop, done ACTION, place NAME, tool NAME, set-point N, airflow N, note TEXT, quit',
    unknown: (text) => `"${text}" is not understood`,
  },
};

export const englishSpokenRework: SpokenRework = {
  heatOn: (place) => `heat on, ${place}`,
  heatOff: (seconds) => `heat off, ${seconds} seconds`,
  near: 'nearly at the limit',
  passed: 'past the limit: take heat away',
  logged: 'noted',
  controlMoved: (pin) => `${pin} was not touched and has moved: warm or wet, wait`,
  outcome: {
    good: 'recheck good',
    wait: 'recheck: wait, the board is warm or wet',
    bad: 'recheck not good',
    incomplete: 'recheck not complete',
  },
};
