// The page in one sentence, with a mark for every pin. Never says more than was measured.
import { verdicts } from '../../verdict.js';
import type { Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Summary } from '../document.js';
import { markOf } from '../marked.js';
import { isFaulty, isUnclear, type PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';
import { closedHeadline, isWorkedOn } from './after-work.js';

export const summaryOf = (
  report: Report,
  pins: readonly PinFacts[],
  words: ReportWords,
): Summary => {
  const { shared, owner } = words;
  const counts = verdicts.flatMap((verdict) => {
    const n = pins.filter(({ record }) => record.verdict === verdict).length;
    return n === 0 ? [] : [[verdict, n] as const];
  });
  return {
    ...(closedHeadline(report, words) ?? sentence(pins, owner.headline)),
    pins: pins.map((pin) => markOf(pin, shared)),
    tally: isWorkedOn(report)
      ? shared.later.owner.beforeWork(owner.tally(counts))
      : owner.tally(counts),
  };
};

const sentence = (
  pins: readonly PinFacts[],
  words: ReportWords['owner']['headline'],
): { readonly tone: Summary['tone']; readonly headline: Phrase } => {
  const total = pins.length;
  const count = (is: (pin: PinFacts) => boolean): number => pins.filter(is).length;
  const faults = count(({ record }) => isFaulty(record.verdict));
  const unclear = count(({ record }) => isUnclear(record.verdict));
  const unread = count(({ record }) => record.verdict === 'unread');
  if (faults > 0) return { tone: 'fault', headline: words.faults(faults, total) };
  if (unread === total) return { tone: 'doubt', headline: words.nothing };
  if (unclear > 0) return { tone: 'doubt', headline: words.unclear(unclear, total) };
  if (unread > 0) return { tone: 'doubt', headline: words.partly(total - unread, unread) };
  return { tone: 'sound', headline: words.allNormal(total) };
};
