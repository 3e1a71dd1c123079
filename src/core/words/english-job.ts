// The job around the walk in English.
import type { JobWords } from './job-words.js';

/** "5 times as likely", in whole numbers from 3 on: the table behind it is no finer. */
const times = (factor: number): string =>
  factor >= 20 ? 'over 20' : factor >= 3 ? String(Math.round(factor)) : factor.toFixed(1);

export const englishJob: JobWords = {
  field: {
    ticket: 'Ticket',
    device: 'Device',
    symptom: 'Symptom',
    history: 'History',
    seen: 'Seen',
    dataMatters: 'Data matters',
  },
  dataMatters: { yes: 'yes', no: 'no', unknown: 'not known' },
  answer: { yes: 'yes', no: 'no', unknown: 'not looked at' },
  noted: (field, text) => `${field}: ${text}`,
  forgotten: (field) => `${field}: taken back`,
  photo: (file, sha256) => `Photo ${file}, SHA-256 ${sha256.slice(0, 16)}…`,
  confirmed: (caution) => `Confirmed: ${caution}`,
  observed: (asks, answer) => `${asks} ${englishJob.answer[answer]}`,

  form: {
    title: 'Intake. Enter skips a question, "<" goes back one, "-" skips all the rest.',
    ask: {
      ticket: 'Ticket',
      device: 'Device',
      symptom: 'Reported symptom',
      history: 'History (earlier repair, liquid, drop)',
      seen: 'Seen under the microscope',
      dataMatters: 'Does the data matter to the owner (y, n)?',
    },
    photo: 'Photo file',
    observations: 'What does the device do? y, n, or Enter where nobody looked.',
    notAnAnswer: (given) => `"${given}" is neither y nor n; Enter alone leaves it out.`,
  },
  cautions: {
    title: 'Before the first touch:',
    usual: {
      'power-out': 'Battery, charger, USB, bench supply and coin cell are out.',
      discharged:
        'Boost and mains-side capacitors are discharged through a resistor; mains primaries are left to licensed practice.',
      'test-voltage':
        "The meter's open-circuit test voltage is one that the low-voltage chips here stand.",
      isolation:
        "The meter's link is isolated, or the black lead may be grounded through this computer.",
      lithium: 'The battery comes off before any heat; a swollen or dented cell stops the job.',
      heat: 'For hot air: fumes drawn off, eyes and hands protected, ESD strap on.',
      'first-power': 'The first power-up will be from a current-limited supply.',
    },
    deferTo: 'Local codes, data sheets and licensed practice go before this list.',
    ask: 'Does all of this hold? (y to begin, anything else leaves): ',
    refused: 'left: the cautions were not confirmed',
    needed:
      'nobody is at a keyboard to confirm the cautions; give --cautions-confirmed once they hold',
    onRealBoard: 'On a real board each of these would be confirmed first.',
  },
  residual: {
    title: (limit) =>
      `Residual volts, measured before anything else: DC volts, one lead on ground. ${limit} and under is discharged.`,
    place: (line, pin) =>
      line === null
        ? 'Hold the other lead on the supply input'
        : `Hold the other lead on ${line}${pin === null ? '' : `, pin ${pin}`}`,
    ask: 'Enter takes the reading; or type volts; s leaves it out: ',
    turnDial: 'The meter is not on DC volts: turn the dial.',
    held: 'Hold, relative or min/max is on: switch it off at the meter.',
    nothing: 'No reading yet.',
    restless: 'The reading does not hold still yet: keep the probe there.',
    overload:
      'The meter shows more than its range holds: the line is charged. Discharge, then again.',
    measured: (line, volts, isDischarged) =>
      `${line === null ? '' : `${line}: `}${volts}, ${isDischarged ? 'discharged' : 'still charged'}`,
    again: 'Discharge it through a resistor, then again.',
    skipped: (reason) => `Residual volts not measured: ${reason}`,
    why: 'Why is it left out? ',
    notVolts: (given) => `"${given}" is no number of volts.`,
    noKeyboard: 'nobody at a keyboard',
    typeThem:
      'The driver of this meter knows no DC volts: read them off the display and type them.',
    askedNot: 'no reason given',
    back: (measure) => `Now set the meter to ${measure}.`,
  },
  triage: {
    nothingNamed: 'This profile names no symptoms: walk every pin.',
    unclear: 'The observations do not tell the symptoms apart yet.',
    likeliest: (says, percent) => `Likeliest: ${says} (${percent} %)`,
    why: (why) => `  ${why}`,
    factor: (asks, answer, factor) =>
      `  ${asks} ${englishJob.answer[answer]}: ${times(Math.max(factor, 1 / factor))} times as ${
        factor >= 1 ? 'likely' : 'unlikely'
      } under it as otherwise`,
    other: (percent) => `Something the profile does not name: ${percent} %`,
    walkFirst: (groups) => `Walk first: ${groups}`,
    notHere: 'Nothing on this connector is to be walked first: settle that before you suspect it.',
    leaveAlone: (groups) => `Leave alone: ${groups}`,
    next: (asks) => `What would tell most: ${asks}`,
    canObserve: (observation, asks) => `--observe ${observation}=…  ${asks}`,
  },
};
