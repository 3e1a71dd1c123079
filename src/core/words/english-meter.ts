// What a dialogue with a meter tells the technician about it, in English. These are sentences of the session file.
import { cleanText } from '../clean-text.js';
import { type ErrorEntry, errorClass } from '../meter/error-entry.js';
import { quoted } from '../problems.js';

const longest = 200;

const meanings = {
  none: 'no error',
  command: 'it does not know a command',
  execution: 'it could not do what it was told',
  device: 'it has a trouble of its own',
  query: 'a question and its answer went past each other',
} as const;

/** `-113` alone says nothing to a technician; its class does. */
export const errorWords = (entry: ErrorEntry): string =>
  cleanText(
    `the meter reports ${entry.code} ${entry.text === '' ? '' : `${quoted(entry.text)} `}(${meanings[errorClass(entry)]})`,
    longest,
  );

const seconds = (value: number): string => `${Number(value.toFixed(2))} s`;

export const muteWords = (question: string, timeoutS: number): string =>
  `no answer to ${quoted(question)} within ${seconds(timeoutS)}, nor to the question before: is the meter on, its data output switched on, the cable and the speed right?`;

export const noReadingWords = (question: string, timeoutS: number): string =>
  `the meter answers, but gives no reading for ${quoted(question)} within ${seconds(timeoutS)}, three times in a row: is it waiting for a trigger, or is another driver right for it?`;

export const lateWords = (question: string, timeoutS: number): string =>
  `answers to ${quoted(question)} come later than the driver's time-out of ${seconds(timeoutS)} and cannot be trusted: raise timeoutS in the driver, or set the meter to a faster rate`;

export const silentWords = (afterS: number): string =>
  `nothing came from the meter for ${seconds(afterS)}: is it on, is its data output switched on?`;

export const garbledWords = (count: number, latest: string): string =>
  cleanText(
    `the last ${count} lines could not be read (${latest}): wrong speed, or another driver is right for this meter`,
    longest,
  );

export const floodWords = (perSecond: number): string =>
  `more than ${perSecond} lines in a second, the rest is dropped: this is no meter's pace`;
