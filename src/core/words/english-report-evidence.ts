// What a report shows of the findings in English: pins, press tests, suspects.
import { say } from './report-phrase.js';
import type { EvidenceWords } from './report-words-technical.js';

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

export const englishEvidence: EvidenceWords = {
  finding: {
    title: 'Findings',
    none: 'No pin that was measured reads other than normal.',
    pin: (pin, line) => say`Pin ${pin}, ${line}`,
    read: 'Read',
    touch: (value, readings, at) =>
      readings === 0
        ? say`${value} at ${at}`
        : say`${value} from ${count(readings, 'reading')} at ${at}`,
    answered: (at) => say`open answered by the technician at ${at}`,
    range: (fullScale) => say`range ${fullScale}`,
    good: 'Good board',
    confidence: 'Confidence',
    mate: 'Mate',
    mateReads: (line, value, word) => say`${line}: ${value}, ${word}`,
    way: 'From the pin inwards',
    shunt: (part) => say`[branch: ${part}]`,
    where: 'Where',
    next: 'Helps next',
    advice: {
      'hold-longer': 'hold the probe longer',
      retake: 'take it again',
      'change-range': 'change the range',
      'change-function': 'change the function',
      'compare-mate': 'compare with the mate',
      discharge: 'discharge, then measure again',
    },
  },
  confidence: {
    very: 'very sure',
    sure: 'sure',
    likely: 'likely, nothing speaks against it',
    unsure: 'not sure enough',
  },
  pins: {
    title: 'All pins',
    caption: 'Every pin in walking order',
    pin: 'Pin',
    line: 'Line',
    read: 'Read',
    scale: 'In limits',
    good: 'Good board',
    verdict: 'Verdict',
    confidence: 'Confidence',
    nothingExpected: 'nothing known',
    unrepeated: 'not confirmed by a second touch',
    touches: (n) => `${n} touches`,
    kind: { signal: 'signal', supply: 'supply', ground: 'ground', unused: 'unused' },
    digits:
      'Figures in parentheses are the standard uncertainty in steps of the last digit. The bar shows the limits of a good board and the reading with twice its standard uncertainty.',
  },
  donor: {
    title: 'Donor beside patient',
    caption: 'Each pin as the donor board and this board read it, one right after the other',
    donor: 'Donor',
    patient: 'This board',
    off: 'Off by',
    explained:
      'Both boards were read with the same meter in one walk, each pin on the donor first. Where the donor was normal itself, its reading was expected of this board, with the usual tolerance and the uncertainty of both readings. One donor shows what that board read, not how much good boards differ.',
  },
  press: {
    title: 'Press tests',
    line: 'Line',
    place: 'Pressed',
    finding: 'Finding',
    answered: 'Answered',
    answeredOf: (n, cycles) => `${n} of ${cycles}`,
    pressedValue: 'While pressed',
    releasedValue: 'While released',
    raw: 'p, raw',
    adjusted: 'p, adjusted',
    findings: {
      loose: 'loose: the reading returns under pressure',
      cracked: 'cracked: the reading is lost under pressure',
      bridged: 'bridged: a short comes or goes under pressure',
      'steady-open': 'stays open',
      steady: 'stays as it is',
      inconclusive: 'no clear answer',
    },
    anyPlace: 'no part named',
    bareBoard: 'bare board, for comparison',
    compared: (line, outcome, parts) => {
      switch (outcome) {
        case 'one':
          return say`${line}: of all places pressed, ${parts} answers most.`;
        case 'tied':
          return say`${line}: ${parts} answer equally often and could not be told apart.`;
        case 'all':
          return say`${line}: every place answers, or bare board does: the board flexes or the joint of the pin moves.`;
        case 'none':
          return say`${line}: no place answers.`;
      }
    },
    noSham:
      'Bare board was not pressed for comparison, so that flexing cannot be told from a joint.',
    trace: (line, place, finding) => say`${line}, ${place}: ${finding}`,
    pressing: 'from the cue to press to the cue to release',
    limits: 'good board',
    explained:
      'The p-value is one-sided and exact (Fisher, The Design of Experiments, 1935): the chance of windows in such agreement with the cues if pressing did nothing. The adjusted one allows for looking again after each cycle and for both directions. People answer a cue after 0.2 to 0.5 s.',
  },
  freePress: {
    title: 'Pressed at will',
    rests: 'At rest',
    restsAt: { contact: 'reads as it should', none: 'does not read as it should' },
    left: 'Changes',
    reads: 'Reads then',
    dwell: 'For',
    repeats: 'Repeats',
    doesRepeat: 'yes',
    doesNotRepeat: 'not shown',
    marked: 'Marked presses',
    marks: (away, presses, between) =>
      `changed in ${away} of ${presses}, and ${between === 1 ? 'once' : `${between} times`} between`,
    noMarks: 'none marked',
    trace: (line) => say`${line}, pressed at will`,
    explained:
      'The technician pressed when they liked. A change counts when it lasts longer than a bounce or a slip; it repeats when it came three times and read alike each time. Without marked presses nothing says that the hand caused it. The p-value of marked presses is one-sided and raw, and a rhythm could imitate them: a paced press test is the stronger evidence.',
  },
  suspects: {
    title: 'Suspects',
    place: 'Place',
    lines: 'Lines',
    probability: 'Probability',
    none: 'only misread, nothing is at fault',
    other: 'something the profile does not name',
    chain: (pin, line) => say`Along ${line}, from pin ${pin} to the chip`,
    next: ({ probe, side }, { line, pin, part }) => {
      const at = pin === null ? say`${line}` : say`pin ${pin} (${line})`;
      const place = part ?? line;
      switch (probe) {
        case 'retake':
          return say`Next best: touch ${at} again.`;
        case 'other-ground':
          return say`Next best: move the clip to another ground and touch ${at} again.`;
        case 'press':
          return say`Next best: press ${place} while probing ${at}.`;
        case 'place':
          return side === 'chip'
            ? say`Next best: probe ${line} at the chip.`
            : say`Next best: probe ${line} on the ${side === 'near' ? 'near' : 'far'} side of ${place}.`;
      }
    },
    explained:
      'Probabilities given all verdicts, press tests and probes of this session, with the priors and chains of the profile. Two places can be at fault at once, so that they need not add up to 100 %.',
  },
  probed: {
    title: 'Places probed along a line',
    place: 'Place',
    atChip: 'at the chip',
    side: (part, near) => say`${part}, ${near ? 'side of the pin' : 'side of the chip'}`,
    explained:
      'Read with the same probe and ground as the pins. A place that reads as it should, behind a pin that does not, puts the fault between the two.',
  },
};
