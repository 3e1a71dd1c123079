// The English of the screens.
import { englishPressScreen } from './english-press-screen.js';
import type { ScreenWords } from './screen-words.js';

export const englishScreen: ScreenWords = {
  key: {
    open: 'open',
    next: 'next',
    back: 'back',
    skip: 'skip',
    retake: 'retake',
    press: 'press test',
    probe: 'probe',
    'go-to': 'go to',
    note: 'note',
    zero: 'zero leads',
    reference: 'reference',
    pause: 'pause',
    dismiss: 'dismiss',
    repeat: 'say again',
    review: 'review',
    keys: 'keys',
    quit: 'quit',
  },
  keyMeans: {
    open: 'the line at this pin is open',
    next: 'take the pin as it was read, go on',
    back: 'one pin back',
    skip: 'leave this pin unread',
    retake: 'read the last pin again',
    press: 'press-test the line of the last pin',
    probe: 'probe the place that would tell most, then go on',
    'go-to': 'go to a pin by its name',
    note: 'write a note at this pin',
    zero: 'zero the leads, before the walk',
    reference: 'try the meter on the reference, before the walk',
    pause: 'pause, and go on',
    dismiss: 'dismiss the question, end the probe',
    repeat: 'say the last thing again',
    review: 'list what is not normal',
    keys: 'this page',
    quit: 'leave; everything is saved',
  },
  resume: 'go on',
  large: {
    overload: 'OL',
    blank: '- -',
    fault: '- ? -',
    settling: 'SETTLING',
    charging: 'CHARGING',
    restless: 'RESTLESS',
    touch: 'TOUCH',
    lift: 'LIFT',
    ready: (step, refused) =>
      refused ? 'LIFT' : step === 'lead-zero' ? 'TIPS TOGETHER' : 'REFERENCE',
    ground: (which, rests) => (which === 1 ? 'TOUCH GROUND' : rests ? 'LIFT' : 'TOUCH ANOTHER'),
    paused: 'PAUSED',
    held: 'HELD',
    trouble: 'NOT SAVED',
    finished: 'WALKED',
    question: (question, pin) => {
      switch (question) {
        case 'open':
          return pin === '' ? 'OPEN?' : `${pin} OPEN?`;
        case 'same-or-next':
          return 'WHICH PIN?';
        case 'shifted':
          return `${pin} SHIFTED?`;
        case 'go-back':
          return 'GO BACK';
      }
    },
  },
  title: { groundCheck: 'Ground check', review: 'Not normal', keys: 'Keys', latest: 'Latest' },
  simulated: 'SIMULATED',
  simulatedShort: 'SIM',
  row: 'row',
  range: (fullScale) => `range ${fullScale}`,
  next: 'next',
  probing: 'probe',
  goesOnAt: 'then',
  last: 'last',
  limit: { low: 'low', high: 'high' },
  expected: 'expected',
  atMost: (limit) => `under ${limit} expected`,
  off: (percent) => {
    const written = Math.abs(percent).toFixed(Math.abs(percent) < 9.95 ? 1 : 0);
    return Number(written) === 0 ? '0 %' : `${percent < 0 ? '-' : '+'}${written} %`;
  },
  left: (pins) => `${pins} to go`,
  lift: 'lift',
  confirm: (next) => `touch it again to confirm, or ${next} to take it`,
  confirmShort: (next) => `touch again, or ${next}`,
  refused: (act, reason) => `${act}: ${reason}`,
  question: (question, place, keys, expectedOverload) => {
    switch (question) {
      case 'open':
        return [
          expectedOverload
            ? `Nothing is read at ${place}, and nothing should be. Is it so?`
            : `Nothing is read at ${place}. Is the line open?`,
          `Answer ${keys.open}, or tap ground twice. Probing goes on as before.`,
        ];
      case 'same-or-next':
        return [
          `Was that the pin before, or ${place}?`,
          `Lift and touch again, or ${keys.next} for ${place}.`,
        ];
      case 'shifted':
        return [
          `The readings fit one place along better. Check ${place}.`,
          `${keys.dismiss} when it is right.`,
        ];
      case 'go-back':
        return [
          `Not sure which board that was. Touch ${place} again,`,
          'then the same pin of the patient: both count anew from there.',
        ];
    }
  },
  held: (_reason, detail) => [`${detail}.`, 'Nothing is judged until that is over.'],
  paused: (reason, key) => {
    switch (reason) {
      case 'asked':
        return [`${key} to go on.`];
      case 'link-lost':
        return ['The meter is gone.', 'The walk goes on at this pin when it comes back.'];
      case 'meter-silent':
        return ['The meter is silent. Is it on, and is its output on?'];
      case 'file-blocked':
        return ['The session file could not be written.'];
    }
  },
  trouble: (reason) => [reason, 'Nothing is taken in until the session file can be written again.'],
  readyOf: (step) => (step === 'lead-zero' ? 'leads' : 'reference'),
  readyStep: (step, known) =>
    step === 'lead-zero'
      ? 'hold the probe tips together'
      : `touch both ends of the reference, ${known}`,
  groundOf: (which) => `ground ${which} of 2`,
  groundContact: (which) => `G${which}`,
  groundStep: (which, ofBoards) => {
    if (ofBoards) {
      return which === 1
        ? 'touch a ground pin of the DONOR with the walking lead'
        : 'now touch a ground pin of the PATIENT';
    }
    return which === 1
      ? 'touch a ground pin with the walking lead'
      : 'lift, then touch another ground pin';
  },
  board: { donor: 'DONOR', patient: 'PATIENT' },
  pin: (pin) => `pin ${pin}`,
  pinOne: 'pin 1',
  viewed: { plug: 'seen on the plug', receptacle: 'seen on the receptacle' },
  beforeYouBegin: 'Before you begin',
  mate: 'mate',
  way: 'on its way',
  branch: 'branch',
  chainRest: (lead, other, none) =>
    [
      ...(lead === 0 ? [] : [`a lead ${lead} %`]),
      ...(other === 0 ? [] : [`something unnamed ${other} %`]),
      ...(none === 0 ? [] : [`only misread ${none} %`]),
    ].join(', '),
  allNormal: 'Every pin reads normal.',
  noneFound: 'nothing so far',
  choose: 'choose',
  goAndRetake: 'go there',
  more: (n) => `and ${n} more`,
  goTo: 'Go to pin',
  note: 'Note',
  noteAt: (pin) => `Note at pin ${pin}`,
  noPin: (pin) => `there is no pin "${pin}"`,
  promptKeys: 'enter takes it, escape leaves it',
  quitAsk: (key) => `Leave? Everything is saved. "${key}" again leaves, any other key stays.`,
  anyKeyBack: 'any key goes back',
  tooSmall: (columns, rows) => `make the terminal at least ${columns} by ${rows}`,
  place: (at, total) => `${at} of ${total}`,
  press: englishPressScreen,
  learner: {
    title: 'Learn keys and pedals',
    press: (means) => `Press the key or pedal for: ${means}`,
    hint: 'enter keeps the present key, escape ends here',
    taken: (name, means) => `"${name}" is taken: ${means}`,
    never: (name) => `"${name}" cannot be learnt`,
  },
  reader: {
    reading: (reading) => `reads ${reading}`,
    chosen: (at, total, line) => `${at} of ${total}: ${line}`,
    prompt: (label) => `${label}: type it, then press enter; escape leaves it`,
    left: 'Left.',
  },
};
