// Figures as a report writes them, the same in every language: percent, spans of time, lists.
import { percentOf } from '../walk/certainty.js';
import { type Datum, join, type Phrase, say, value } from '../words/report-phrase.js';

export const writtenPercent = (probability: number): Datum => value(percentOf(probability));

/** Two digits; what rounds to nothing is said to be small, not nothing. */
export const writtenP = (p: number): Phrase =>
  say`${value(p < 0.0001 ? '< 0.0001' : String(Number(p.toPrecision(2))))}`;

/** Symbols of the SI, so that no language needs its plurals. */
export const writtenSpan = (seconds: number): Datum => {
  if (seconds < 60) return value(`${seconds.toFixed(1)} s`);
  const whole = Math.round(seconds);
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  const rest = `${minutes} min ${whole % 60} s`;
  return value(hours === 0 ? rest : `${hours} h ${rest}`);
};

const mostListed = 8;

/** Names one after the other; after eight, how many more there are. */
export const listed = (
  data: readonly Datum[],
  words: { readonly comma: string; more(n: number): Phrase },
): Phrase => {
  const shown = join(data.slice(0, mostListed), words.comma);
  return data.length <= mostListed ? shown : say`${shown} ${words.more(data.length - mostListed)}`;
};
