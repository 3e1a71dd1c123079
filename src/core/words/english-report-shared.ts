// What both parts of a report say in English.
import { englishReportJob } from './english-report-job.js';
import { englishLater } from './english-report-later.js';
import { englishVerdicts } from './english-verdicts.js';
import { say } from './report-phrase.js';
import type { SharedWords } from './report-words.js';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export const englishShared: SharedWords = {
  language: 'en',
  direction: 'ltr',
  comma: ', ',
  job: englishReportJob,
  later: englishLater,
  arrow: ' → ',
  more: (n) => `and ${n} more`,
  verdict: englishVerdicts,
  measure: {
    resistance: 'resistance to ground',
    diode: 'diode drop',
    continuity: 'continuity to ground',
    'dc-volts': 'DC voltage',
  },
  polarity: {
    'red-walks': 'red lead walks, black lead on ground',
    'black-walks': 'black lead walks, red lead on ground',
  },
  overload: 'overload',
  place: (where, id) => (where === 'part' ? say`part ${id}` : say`${where} ${id}`),
  lead: { 'ground-clip': 'the ground clip', 'walking-lead': 'the walking lead' },
  day: ({ year, month, day }) => `${day} ${months[month - 1] ?? month} ${year}`,
  atMost: (limit) => say`at most ${limit}`,
  between: (low, high) => say`${low} to ${high}`,
};
