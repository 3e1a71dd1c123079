// The job around the walk, in a report in English.
import { say } from './report-phrase.js';
import type { JobReportWords } from './report-words-job.js';

export const englishReportJob: JobReportWords = {
  title: 'Intake',
  broughtTitle: 'What was brought in',
  field: {
    ticket: 'Ticket',
    device: 'Device',
    symptom: 'Reported',
    history: 'History',
    seen: 'Seen under the microscope',
    dataMatters: 'Data',
  },
  dataMatters: {
    yes: 'It was noted at intake that the data on the device matters to you.',
    no: 'It was noted at intake that the data on the device does not matter to you.',
    unknown: 'Whether the data on the device matters to you was not settled at intake.',
  },
  data: {
    yes: 'matters to the owner',
    no: 'does not matter to the owner',
    unknown: 'not settled whether it matters',
  },
  cautions: {
    title: 'Cautions confirmed',
    by: { keyboard: 'at the keyboard', option: 'by option' },
    none: 'None was confirmed in this session.',
  },
  residual: {
    title: 'Residual volts, before the first reading',
    at: 'At',
    where: 'Line',
    input: 'supply input',
    volts: 'Volts',
    says: 'Means',
    discharged: (limit) => say`discharged (${limit} and under)`,
    charged: (limit) => say`charged (over ${limit})`,
    by: { meter: 'read from the meter', typed: 'typed' },
    skipped: (reason) => say`Not measured: ${reason}`,
    none: 'Not measured.',
  },
  photos: { title: 'Photos', file: 'File', hash: 'SHA-256', size: 'Bytes' },
  triage: {
    title: 'Triage',
    observation: 'Observed',
    answer: 'Answer',
    says: { yes: 'yes', no: 'no', unknown: 'not looked at' },
    likely: 'Likeliest',
    other: 'something the profile does not name',
    walkFirst: 'Walk first',
    leaveAlone: 'Leave alone',
    nothing: 'nothing',
    how: 'Weighed by the table of symptoms in the profile: how often each observation goes with each symptom. A proposal, not a finding.',
  },
};
