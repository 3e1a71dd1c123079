// The connector: what the profile says of it, and its pins by row with their verdicts.
import { verdicts } from '../../verdict.js';
import { foreign, name, type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Connector, Fact, Section } from '../document.js';
import { marked, markOf } from '../marked.js';
import type { PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';

export const connectorSection = (
  { account }: Report,
  pins: readonly PinFacts[],
  { shared, technical }: TechnicalLanguage,
): Section => {
  const words = technical.connector;
  const { id, title, connector } = account.opened.profile.content;
  const facts: Fact[] = [];
  const fact = (label: string, says: Phrase | undefined): void => {
    if (says !== undefined) facts.push({ label, says: [says] });
  };
  fact(
    words.id,
    connector.title === undefined
      ? say`${name(connector.id)}`
      : say`${name(connector.id)}${shared.comma}${foreign(connector.title)}`,
  );
  fact(words.profile, say`${name(id)}${shared.comma}${foreign(title)}`);
  fact(
    words.pinOne,
    connector.pinOne === undefined ? undefined : say`${foreign(connector.pinOne)}`,
  );
  fact(words.viewed, connector.viewed && words.viewedAs[connector.viewed]);
  fact(words.numbering, connector.numbering && words.numberedAs[connector.numbering]);
  fact(words.endTabs, connector.endTabs && words.endTabsAre[connector.endTabs]);
  return {
    id: 'connector',
    title: words.title,
    blocks: [
      { kind: 'facts', facts },
      mapOf(pins, { shared, technical }),
      { kind: 'text', text: words.order },
    ],
  };
};

const mapOf = (
  pins: readonly PinFacts[],
  { shared, technical: { connector } }: TechnicalLanguage,
): Connector => {
  const rows = new Map<number | undefined, PinFacts[]>();
  for (const pin of pins) {
    const row = rows.get(pin.planned.row);
    if (row === undefined) rows.set(pin.planned.row, [pin]);
    else row.push(pin);
  }
  const seen = new Set(pins.map(({ record }) => record.verdict));
  return {
    kind: 'connector',
    title: connector.map,
    rows: [...rows].map(([row, own]) => ({
      title: row === undefined ? connector.noRow : connector.row(row),
      pins: own.map((pin) => markOf(pin, shared)),
    })),
    legend: verdicts
      .filter((verdict) => seen.has(verdict))
      .map((verdict) => marked(verdict, shared)),
  };
};
