// The meter, what it is trusted with, and how uncertainty and verdicts come from that.

import { formatReading } from '../../measure/format-reading.js';
import type { AccuracyStatement } from '../../session-events.js';
import { leastConfidence } from '../../walk/judge.js';
import { foreign, join, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Fact, Section, Table } from '../document.js';
import type { Report } from '../report.js';
import { writtenPercent } from '../written.js';

export const meterSection = (
  report: Report,
  { shared, technical }: TechnicalLanguage,
  unit: string,
): Section => {
  const words = technical.meter;
  const { opened, meter } = report.account;
  const { function: measure, polarity } = opened.measure;
  const { values, overloads, blanks, faults, lowBattery } = meter.counts;
  const facts: Fact[] = [
    {
      label: words.identity,
      says: meter.identities.size === 0 ? [words.unnamed] : told([...meter.identities]),
    },
    {
      label: words.driver,
      says: [opened.driver === null ? words.noDriver : say`${name(opened.driver.id)}`],
    },
    { label: words.link, says: told([opened.link]) },
    {
      label: words.measured,
      says: [`${shared.measure[measure]}${shared.comma}${shared.polarity[polarity]}`],
    },
    { label: words.readings, says: [words.counted(values, overloads, blanks, faults)] },
    ...leadsOf(report, words, unit),
    { label: words.ground, says: [groundOf(report, words, unit, shared.comma)] },
  ];
  if (lowBattery > 0)
    facts.push({ label: words.lowBattery, says: [words.lowBatteryIn(lowBattery)] });
  if (meter.told.length > 0) {
    facts.push({
      label: words.errors,
      says: told(meter.told.slice(0, mostTold).map(({ text }) => text)),
    });
  }
  facts.push({ label: words.accuracy, says: [words.from[opened.accuracy.from]] });
  return {
    id: 'meter',
    title: words.title,
    blocks: [
      { kind: 'facts', facts },
      accuracyTable(opened.accuracy, words, unit),
      { kind: 'text', text: words.uncertainty },
      { kind: 'text', text: words.verdicts(writtenPercent(leastConfidence)) },
    ],
  };
};

const mostTold = 20;

const told = (texts: readonly string[]): readonly Phrase[] =>
  texts.map((text) => say`${foreign(text)}`);

const leadsOf = (
  { account }: Report,
  words: TechnicalWords['meter'],
  unit: string,
): readonly Fact[] => {
  const { leads } = account.state;
  const { reference } = account.meter;
  const facts: Fact[] = [];
  if (leads !== null) {
    const ohms = value(formatReading(leads.ohms, leads.standardUncertainty, unit));
    facts.push({ label: words.leads, says: [words.leadsZeroed(ohms)] });
  }
  if (reference !== null) {
    const { known, outcome, standardUncertainty } = reference;
    // The meter's own share is in what is allowed: no finer than that makes sense of.
    const leastDigit = 'limit' in outcome ? outcome.limit / 40 : 0;
    const digits = Math.max(standardUncertainty, leastDigit);
    const read = value(formatReading(reference.value, digits, unit));
    const stated = value(`${formatReading(known.value, null, unit)} ± ${100 * known.tolerance} %`);
    const says = words.referenceRead(read, stated, outcome.ok);
    facts.push({ label: words.reference, says: [says] });
  }
  return facts;
};

const groundOf = (
  { account }: Report,
  words: TechnicalWords['meter'],
  unit: string,
  comma: string,
): Phrase => {
  const { ground, opened } = account;
  if (ground.outcome === 'skipped') return words.groundSkipped;
  if (!opened.groundCheck) return words.groundLeftOut;
  if (ground.values.length === 0) return words.groundSkipped;
  return join(
    ground.values.map((touched) => value(formatReading(touched, null, unit))),
    comma,
  );
};

const accuracyTable = (
  { rows }: AccuracyStatement,
  words: TechnicalWords['meter'],
  unit: string,
): Table => {
  const written = (of: number): Phrase => say`${value(formatReading(of, null, unit))}`;
  return {
    kind: 'table',
    caption: words.accuracy,
    columns: [
      { title: words.range, as: 'figures' },
      { title: words.resolution, as: 'figures' },
      { title: words.ofReading, as: 'figures' },
      { title: words.counts, as: 'figures' },
    ],
    rows: rows.map(({ fullScale, resolution, percent, counts }) => [
      { text: fullScale === null ? words.anyRange : written(fullScale), heads: true },
      { text: resolution === null ? words.inferred : written(resolution) },
      { text: say`${value(`± ${percent} %`)}` },
      { text: say`${value(`± ${counts}`)}` },
    ]),
  };
};
