// Every pin that does not read normal, with each touch, what a good board reads, its mate, and the way from the
// pin to the chip on which the fault must lie, as seen from the connector.

import { formatReading } from '../../measure/format-reading.js';
import type { Profile } from '../../profile/profile-format.js';
import { foreign, join, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Card, Fact, Section } from '../document.js';
import { marked } from '../marked.js';
import type { PinFacts } from '../pin-facts.js';
import { exactReading, goodBoard } from '../readings.js';
import type { Report } from '../report.js';
import { confidenceIn } from './confidence.js';

interface Setting {
  readonly report: Report;
  readonly pins: readonly PinFacts[];
  readonly language: TechnicalLanguage;
  readonly unit: string;
}

export const findingsSection = (
  report: Report,
  pins: readonly PinFacts[],
  language: TechnicalLanguage,
  unit: string,
): Section => {
  const words = language.technical.finding;
  const setting: Setting = { report, pins, language, unit };
  const found = pins.filter(({ record }) => !['normal', 'unread'].includes(record.verdict));
  return {
    id: 'findings',
    title: words.title,
    blocks:
      found.length === 0
        ? [{ kind: 'text', text: words.none }]
        : found.map((pin) => cardOf(pin, setting)),
  };
};

const cardOf = (pin: PinFacts, setting: Setting): Card => {
  const { shared, technical } = setting.language;
  const words = technical.finding;
  const { planned, record } = pin;
  const { advice } = setting.report.account;
  const facts: Fact[] = [{ label: words.read, says: readings(pin, setting) }];
  if (record.expected !== null) {
    const good = goodBoard(record.expected, setting.unit, shared);
    facts.push({ label: words.good, says: [good] });
  }
  facts.push({ label: words.confidence, says: [confidenceIn(record, technical)] });
  facts.push(...mateOf(pin, setting), ...wayOf(pin, setting));
  const next = advice.get(planned.pin);
  if (next !== undefined) facts.push({ label: words.next, says: [words.advice[next]] });
  return {
    kind: 'card',
    verdict: marked(record.verdict, shared),
    title: words.pin(name(planned.pin), name(planned.line)),
    facts,
  };
};

const readings = (
  { touches, confirmed }: PinFacts,
  { report, language, unit }: Setting,
): readonly Phrase[] => {
  const words = language.technical.finding;
  return touches.map((touch) => {
    const at = value(report.times.momentOf(touch.t));
    if (touch.overload && confirmed) return words.answered(at);
    const told = words.touch(exactReading(touch, unit, language.shared), touch.readings, at);
    if (touch.range === null) return told;
    return say`${told}${language.shared.comma}${words.range(value(formatReading(touch.range, null, unit)))}`;
  });
};

const mateOf = ({ planned }: PinFacts, { pins, language, unit }: Setting): readonly Fact[] => {
  const { mate } = planned;
  const found = pins.filter((pin) => mate !== undefined && pin.planned.line === mate);
  if (found.length === 0) return [];
  const { shared, technical } = language;
  const says = found.map((pin) =>
    technical.finding.mateReads(
      name(pin.planned.line),
      exactReading(pin.record, unit, shared),
      shared.verdict[pin.record.verdict],
    ),
  );
  return [{ label: technical.finding.mate, says }];
};

const wayOf = ({ line }: PinFacts, { report, language }: Setting): readonly Fact[] => {
  const words = language.technical.finding;
  const parts: NonNullable<Profile['parts']> = report.account.opened.profile.content.parts ?? {};
  const chain = line?.chain ?? [];
  if (chain.length === 0) return [];
  const stops = chain.map((stop): Phrase => {
    if ('joint' in stop) return say`${foreign(stop.joint)}`;
    if ('part' in stop) return say`${name(stop.part)}`;
    return 'chip' in stop ? say`${foreign(stop.chip)}` : words.shunt(name(stop.shunt.part));
  });
  const places = chain.flatMap((stop): Phrase[] => {
    if (!('part' in stop) || !Object.hasOwn(parts, stop.part)) return [];
    const { title, where } = parts[stop.part] ?? {};
    const told = [title, where].flatMap((text) => (text === undefined ? [] : [foreign(text)]));
    return told.length === 0 ? [] : [say`${name(stop.part)}: ${join(told, '; ')}`];
  });
  return [
    { label: words.way, says: [join(stops, language.shared.arrow)] },
    ...(places.length === 0 ? [] : [{ label: words.where, says: places }]),
  ];
};
