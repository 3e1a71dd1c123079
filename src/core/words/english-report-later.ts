// The English of what a report says of the work after the walk.
import { englishRework } from './english-rework.js';
import { join, say } from './report-phrase.js';
import type { LaterWords } from './report-words-later.js';

export const englishLater: LaterWords = {
  action: englishRework.action,
  // Whoever reads a report need not know the bench's short word.
  tool: { ...englishRework.tool, iron: 'soldering iron' },
  unnamedPlace: 'a place without a name',
  difference: {
    changed: 'changed',
    unchanged: 'unchanged',
    'newly-bad': 'newly bad',
    unknown: 'not comparable',
  },
  because: {
    bad: 'not normal before',
    mate: 'mate of a bad line',
    part: 'through a reworked part',
    heat: 'near heat',
    supply: 'supply',
    control: 'untouched',
    anchor: 'ground on the way',
  },
  outcome: {
    good: 'good: what was bad reads well, and nothing has changed for the worse',
    wait: 'wait: untouched lines read otherwise than before, so the board was warm or wet',
    bad: 'not good: something is still bad, newly bad, or moves under pressure',
    incomplete: 'not complete: not everything in question was read or pressed again',
  },
  doubt: {
    'no-recheck': 'The board was not measured again after the work.',
    'before-rework': 'The last measurement is older than the last work on the board.',
    wait: 'The last measurement found the board warm or wet, so that it proves nothing.',
    bad: 'The last measurement was not good.',
    incomplete: 'The last measurement is not complete.',
  },
  as: {
    repaired: 'repaired',
    'partly-repaired': 'repaired in part',
    'not-repaired': 'not repaired',
    returned: 'returned without repair',
  },
  draw: {
    'as-expected': 'as expected',
    'too-high': 'too high',
    'too-low': 'too low',
    'not-known': 'not known to be right or wrong',
  },
  works: { yes: 'works', partly: 'works in part', no: 'does not work' },
  owner: {
    repaired: (proven) =>
      proven
        ? 'Repaired: the faults that were found read well when measured again.'
        : 'Closed as repaired by the technician; the measurements alone do not prove it.',
    partlyRepaired: 'Repaired in part.',
    notRepaired: 'Not repaired.',
    returned: 'Returned without repair.',
    beforeWork: (tally) => say`Before the work: ${tally}`,
    done: (place, action, times, heat) => {
      const often = times === 1 ? '' : ` ${times} times`;
      return heat === null
        ? say`${place}: ${action}${often}.`
        : say`${place}: ${action}${often}, ${heat} under heat in all.`;
    },
    moreDone: (n) => `${n} more on the technical pages.`,
    rechecked: (read, total, outcome) =>
      say`Measured again after the work, ${read} of ${total} places: ${outcome}.`,
    pressedAgain: (n) =>
      n === 1
        ? 'The place that was loose was pressed again and stayed put.'
        : `${n} places that were loose were pressed again and stayed put.`,
    functionTested: (tested, works) => say`Function test, ${tested}: ${works}.`,
    power: (draw) => say`Current drawn from a bench supply: ${draw}.`,
    noPower: 'The current drawn from a bench supply before the first start.',
    reason: (text) => say`Reason given: ${text}`,
    cause: (text) => say`Cause, as the technician found it: ${text}.`,
  },
  rework: {
    title: 'Rework and heat',
    at: 'At',
    place: 'Place',
    action: 'Done',
    setting: 'Tool',
    heat: 'Heat',
    note: 'Note',
    setPoint: (figure) => say`${figure}`,
    airflow: (figure) => say`air ${figure}`,
    atLeast: 'at least; the program ended while heat was on',
    confirmed: 'The cautions before heat were confirmed.',
    totals: (where, total, allowed) =>
      allowed === null
        ? say`${where}: ${total} under heat in all; no limit is given.`
        : say`${where}: ${total} of ${allowed} under heat in all.`,
    passed: (where, allowed) => say`${where}: the limit of ${allowed} was passed.`,
  },
  recheck: {
    title: 'Before and after',
    caption: 'Every pin walked again',
    file: 'File',
    fingerprint: 'Fingerprint',
    began: 'Began',
    result: 'Result',
    controls: 'Untouched lines',
    controlsAre: {
      'as-before': 'read as before',
      moved: 'read otherwise than before',
      unread: 'not all read',
    },
    pressed: 'Pressed again',
    pressIs: {
      stays: 'stays put',
      moves: 'moves',
      unclear: 'no clear answer',
      'not-pressed': 'not pressed',
    },
    notFinished: 'The recheck was not brought to an end.',
    pin: 'Pin',
    line: 'Line',
    why: 'Why',
    before: 'Before',
    after: 'After',
    compared: 'Compared',
    score: 'E',
    explained:
      'E is the difference over its expanded uncertainty (normalised error, after the GUM): over 1 the two readings differ. Both readings count as independent, so that a change has to be clear to be called one.',
  },
  tests: {
    title: 'Tests and closing',
    power: 'Bench supply',
    drawn: (amperes, volts, limit, draw) =>
      join(
        [
          ...(amperes === null ? [] : [say`${amperes}`]),
          ...(volts === null ? [] : [say`at ${volts}`]),
          ...(limit === null ? [] : [say`limited to ${limit}`]),
          draw,
        ],
        ', ',
      ),
    function: 'Function test',
    closed: 'Closed as',
    reason: 'Reason',
    cause: 'Cause',
    restsOn: 'Rests on',
    open: 'not closed yet',
  },
};
