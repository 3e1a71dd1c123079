// The first page of a report in English.

import { englishShared as shared } from './english-report-shared.js';
import { englishTechnical } from './english-report-technical.js';
import { type Phrase, say } from './report-phrase.js';
import type { NamedPins, ReportWords } from './report-words.js';

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const pinNames = ({ names, count: n }: NamedPins): Phrase =>
  n === 1 ? say`pin ${names}` : say`pins ${names}`;

const measured = {
  resistance: 'the resistance from each pin to ground',
  diode: 'the voltage drop from each pin to ground at a small test current (diode test)',
  continuity: 'whether each pin is connected to ground',
  'dc-volts': 'the DC voltage between each pin and ground',
} as const;

export const englishReport: ReportWords = {
  shared,
  owner: {
    title: 'Handover report',
    connector: (id, title) =>
      title === null ? say`Connector ${id}` : say`Connector ${id}: ${title}`,
    when: (span) => {
      if (span === null) return 'No date is recorded.';
      const { day, from, lastDay, to, zone } = span;
      const end = lastDay === null ? say`${to}` : say`${lastDay}, ${to}`;
      const place = zone === null ? '' : say` (${zone})`;
      return say`Measured on ${day}, ${from} to ${end}${place}`;
    },
    simulated: {
      title: 'Simulated readings.',
      text: 'They come from the virtual bench, a practice program, and not from a meter. No device was measured, and this page proves nothing about any device.',
    },
    demo: {
      title: 'Invented profile.',
      text: 'The connector and its expected values are demo data and belong to no real board.',
    },
    recorded: {
      title: 'From a recording.',
      text: 'The readings were taken from a stored reading log. When and on which device they were taken is not part of this record.',
    },
    redacted: (of) => ({
      title: "Without the customer's data.",
      text: say`Ticket, device, symptom, history, notes, photos and file names were taken out of this record before it was passed on. Measurements and findings are complete. The whole record has the fingerprint ${of}.`,
    }),
    unfinished: (left, total) => ({
      title: 'Not finished.',
      text: `${left} of ${count(total, 'pin')} had not been measured when this report was made.`,
    }),
    headline: {
      faults: (n, total) =>
        `${n} of ${count(total, 'pin')} ${n === 1 ? 'does' : 'do'} not read as on a good board.`,
      unclear: (n, total) =>
        `No pin is clearly wrong, but ${n} of ${count(total, 'pin')} could not be decided.`,
      partly: (read, left) =>
        `${count(read, 'pin')} ${read === 1 ? 'was' : 'were'} measured and nothing wrong was found there; ${left} ${left === 1 ? 'was' : 'were'} not measured.`,
      allNormal: (total) =>
        `Nothing wrong was found at the ${count(total, 'pin')}, as seen from this connector.`,
      nothing: 'Nothing has been measured yet.',
    },
    tally: (counts) => counts.map(([word, n]) => `${n} ${shared.verdict[word]}`).join(', '),
    failed: {
      title: 'What failed',
      fault: (pin, line, fault) => {
        switch (fault) {
          case 'open':
            return say`Pin ${pin}, ${line}: no connection was found where a good board has one.`;
          case 'open-unknown':
            return say`Pin ${pin}, ${line}: no connection was found.`;
          case 'short':
            return say`Pin ${pin}, ${line}: it is connected to ground almost directly.`;
          case 'low':
            return say`Pin ${pin}, ${line}: it reads lower than on a good board; something lets current through that should not.`;
          case 'high':
            return say`Pin ${pin}, ${line}: it reads higher than on a good board; part of its path may be broken.`;
          case 'unexpected':
            return say`Pin ${pin}, ${line}: a connection was found where a good board has none.`;
        }
      },
      read: (value, good) =>
        good === null ? say`It read ${value}.` : say`It read ${value}. A good board: ${good}.`,
      readNothing: 'nothing (overload)',
      unclear: (pins) => say`Could not be decided: ${pinNames(pins)}.`,
      nothingMeasured: 'Nothing has been measured, so nothing can be said.',
      none: 'Nothing wrong was found at the pins that were measured.',
      more: (n) => `${count(n, 'more finding')} on the technical pages.`,
      likely: (place, probability, at) =>
        say`Most likely place of the fault${at === null ? '' : say` at ${pinNames(at)}`}: ${place}, with a probability of ${probability}.`,
      unplaced: (pins) => say`For ${pinNames(pins)} the measurements alone name no single place.`,
      likelyLead: (lead, probability) =>
        say`The device may be sound: ${lead} of the meter explains the readings with a probability of ${probability}.`,
    },
    why: {
      title: 'Why we think so',
      method: (measure) =>
        `A connector has small contacts, its pins. They were touched one by one with the probe of a meter, which showed ${measured[measure]}. The readings were compared with what a good board shows at the same pins.`,
      repeated: 'Each faulty reading was taken again and came out the same.',
      confirmed:
        'Where the meter showed nothing, the technician confirmed that the probe was on the pin.',
      confidence: (least) => say`Confidence in the least certain of these findings: ${least}.`,
      fromHere:
        'This is the view from the connector: a reading tells that something behind the pin is wrong, and not yet which joint or part it is.',
      pressed: (lines, part, finding) => {
        const pressed = part === null ? 'the place was pressed' : say`part ${part} was pressed`;
        switch (finding) {
          case 'loose':
            return say`Whenever ${pressed}, the reading of ${lines} came back: a joint there is loose.`;
          case 'cracked':
            return say`Whenever ${pressed}, the reading of ${lines} was lost: a joint there is cracked.`;
          case 'bridged':
            return say`Whenever ${pressed}, the reading of ${lines} went to a short and back: something there is bridged.`;
        }
      },
    },
    done: {
      title: 'What was done',
      nothing: 'Nothing is recorded yet.',
      measuredOnly:
        'The pins were measured. No repair work is recorded in this session; if there was any, it is not part of this report.',
      notes: (n) => `The technician wrote ${count(n, 'note')}; see the technical pages.`,
    },
    checked: {
      title: 'What was checked',
      pins: (read, total, connector, measure) =>
        say`${read} of ${count(total, 'pin')} of connector ${connector}: ${shared.measure[measure]}.`,
      meter: (meter) => say`Meter: ${meter}.`,
      typed: 'The readings were typed in by hand.',
      groundGood: 'The ground lead: two ground contacts were touched first and read as ground.',
      groundSkipped: 'The ground lead was not checked before the walk.',
      presses: (n) =>
        `${count(n, 'press test')}: a place was pressed in rhythm while the reading was watched.`,
      sittings: (n) => `The work was taken up again ${n === 1 ? 'once' : `${n} times`}.`,
    },
    unchecked: {
      title: 'What was not checked',
      function: 'Whether the device works: no function test is recorded.',
      unread: (pins) => say`Not measured: ${pinNames(pins)}.`,
      unclear: (pins) => say`Not clear: ${pinNames(pins)}.`,
      unrepeated: (pins) => say`Measured once only, though not normal: ${pinNames(pins)}.`,
      nothingExpected: (pins) =>
        say`Tested for a short only, because no good value is known: ${pinNames(pins)}.`,
      readsNothing: (pins) =>
        say`Paths that show nothing on a good board either, so that a break would look the same: ${pinNames(pins)}.`,
      behind:
        'Joints that another path can hide: a normal reading does not prove every joint behind the pin. Parts this connector does not lead to.',
    },
    data: {
      title: 'Your data',
      text: 'This record holds readings of pins and the technician’s notes, and nothing that is stored on the device. Whether data was copied or erased during the work is not recorded here.',
    },
    footer: (fingerprint, day) => say`Record ${fingerprint}. Report made on ${day}.`,
  },
  inDetail: englishTechnical,
};
