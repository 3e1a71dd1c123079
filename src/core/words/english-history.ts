// A shop's history in English.
import type { HistoryWords } from './history-words.js';

const percent = (share: number): string => `${(100 * share).toPrecision(2)} %`;
const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

export const englishHistory: HistoryWords = {
  head: ['profile', 'symptom', 'at fault', 'confirmed', 'found by pressing', 'suspected'],
  noSymptom: 'not noted',
  skipped: (file, why) => `${file}: passed over: ${why}`,
  boards: (profile, boards, explained) =>
    `${profile}: ${count(boards, 'board')} done, the cause known of ${explained}.`,
  summary: (sessions, skipped, simulated) =>
    `${count(sessions, 'session')} counted, ${skipped} passed over${
      simulated === 0 ? '' : `, ${simulated} simulated left out (--simulated counts them)`
    }.`,
  nothing: 'No session here says what was at fault.',
  prior: (place, faults, boards, before, now) =>
    `${place}: at fault on ${faults} of ${boards}: ${percent(before)} before, ${percent(now)} now`,
  noPriors: (profile) =>
    `no board of profile ${profile} has a cause that was confirmed or found by pressing`,
  unplaced: (places) => `At fault, but neither a part nor a joint of the profile: ${places}.`,
  written: (id, file) => `Profile ${id} with these priors written to ${file}`,
  notWritten: 'Nothing written; give --out FILE to write the profile with these priors.',
};
