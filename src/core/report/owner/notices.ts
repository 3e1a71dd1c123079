// What must not be missed: that no meter was there, that the values are invented, that the walk has an open end.
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Notice } from '../document.js';

export const noticesOf = (
  { opened, state }: Account,
  { owner }: ReportWords,
): readonly Notice[] => {
  const { simulated, profile, link } = opened;
  const left = state.pins.filter(({ verdict }) => verdict === 'unread').length;
  const unfinished = left > 0 && left < state.pins.length && state.cursor < state.plan.pins.length;
  return [
    ...(simulated ? [owner.simulated] : []),
    ...(link.startsWith('log:') ? [owner.recorded] : []),
    ...(profile.content.demo === true ? [owner.demo] : []),
    ...(unfinished ? [owner.unfinished(left, state.pins.length)] : []),
  ];
};
