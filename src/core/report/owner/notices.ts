// What must not be missed: that no meter was there, that the values are invented, that the customer's data was
// taken out, that the walk has an open end.
import { shortFingerprint } from '../../session-chain.js';
import { patientAlone } from '../../walk/patient.js';
import { value } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Notice } from '../document.js';

export const noticesOf = (
  { opened, simulated, state }: Account,
  { owner }: ReportWords,
): readonly Notice[] => {
  const { profile, link, redacted } = opened;
  const { pins } = patientAlone(state);
  const left = pins.filter(({ verdict }) => verdict === 'unread').length;
  const unfinished = left > 0 && left < pins.length && state.cursor < state.plan.pins.length;
  return [
    ...(simulated ? [owner.simulated] : []),
    ...(link.startsWith('log:') ? [owner.recorded] : []),
    ...(profile.content.demo === true ? [owner.demo] : []),
    ...(redacted === undefined ? [] : [owner.redacted(value(shortFingerprint(redacted.of)))]),
    ...(unfinished ? [owner.unfinished(left, pins.length)] : []),
  ];
};
