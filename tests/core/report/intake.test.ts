// Intake in a report: what was told is shown as told, cut off from markup, and a session without it shows nothing.
import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../../src/core/events.js';
import type { Section } from '../../../src/core/report/document.js';
import { reportLanguages } from '../../../src/core/words/report-languages.js';
import { plain } from '../../../src/core/words/report-phrase.js';
import { catalogueStrings } from '../../report/catalogue-strings.js';
import { makeDocument } from '../../report/make-report.js';
import { eventful } from '../../report/session-events.js';

const [opened, ...rest] = eventful;
const withJob = (...job: WalkEvent[]): readonly WalkEvent[] =>
  opened === undefined ? [] : [opened, ...job, ...rest];

const hash = 'a'.repeat(64);
const told = (text: string): readonly WalkEvent[] =>
  withJob(
    { type: 'intake-noted', t: 0, ticket: text, symptom: text, seen: text, dataMatters: 'yes' },
    { type: 'photo-attached', t: 0, file: `/home/someone/${text}`, sha256: hash, bytes: 12 },
    { type: 'caution-confirmed', t: 0, caution: 'heat', says: text, by: 'keyboard' },
    { type: 'residual-measured', t: 1, line: 'V3', volts: 12.4, limit: 0.05, by: 'meter' },
    { type: 'residual-measured', t: 2, line: 'V3', volts: 0.003, limit: 0.05, by: 'typed' },
    { type: 'residual-skipped', t: 3, reason: text },
    { type: 'symptom-observed', t: 3, observation: 'lamp', asks: text, answer: 'yes' },
    {
      type: 'groups-proposed',
      t: 3,
      symptoms: [{ id: 'a', says: text, probability: 0.83 }],
      other: 0.17,
      walkFirst: [{ group: 'data', probability: 0.83 }],
      leaveAlone: [],
      because: [],
      next: null,
    },
  );

/** Every text of a section, data and words alike. */
const textsOf = (value: unknown): string[] => {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(textsOf);
};
const sectionOf = (events: readonly WalkEvent[], id: string): Section | undefined => {
  const { owner, technical } = makeDocument(events, 'en');
  return [...owner, ...technical.sections].find((section) => section.id === id);
};
const textOf = (section: Section | undefined): string => textsOf(section).join(' ');

describe('intake in a report', () => {
  it('leaves itself out where nothing was told', () => {
    expect(sectionOf(eventful, 'brought')).toBeUndefined();
    expect(sectionOf(eventful, 'intake')).toBeUndefined();
  });

  it('tells the owner what was brought in, first of all', () => {
    const { owner } = makeDocument(told('black screen'), 'en');
    expect(owner[0]?.id).toBe('brought');
    expect(textOf(owner[0])).toContain('black screen');
  });

  it('tells the owner what was noted of the data', () => {
    const data = textOf(sectionOf(told('x'), 'data'));
    expect(data).toContain(reportLanguages.en.shared.job.dataMatters.yes);
  });

  it('takes back what was taken back', () => {
    const events = withJob(
      { type: 'intake-noted', t: 0, symptom: 'dark' },
      { type: 'intake-noted', t: 1, symptom: '' },
    );
    expect(sectionOf(events, 'brought')).toBeUndefined();
  });

  it('tells a colleague of the charge and of what came after it', () => {
    const text = textOf(sectionOf(told('x'), 'intake'));
    expect(text).toMatch(/12\.4 V.*charged \(over.*50 mV.*3 mV.*discharged/su);
  });

  it('says that no caution was confirmed and no residual volts were measured', () => {
    const text = textOf(sectionOf(withJob({ type: 'intake-noted', t: 0, ticket: '1' }), 'intake'));
    const { cautions, residual } = reportLanguages.en.shared.job;
    expect(text).toContain(cautions.none);
    expect(text).toContain(residual.none);
  });

  it('names photos by file and hash, without their folders', () => {
    const text = textOf(sectionOf(told('before.jpg'), 'intake'));
    expect(text).toContain('before.jpg');
    expect(text).toContain(hash);
    expect(text).not.toContain('someone');
  });

  it('keeps whatever was told a datum, cleaned, and never words of the report', () => {
    const hostile = '\u001b[2J<b>x</b>';
    const { owner, technical } = makeDocument(told(hostile), 'en');
    expect(catalogueStrings([owner, technical]).join(' ')).not.toContain('<b>');
    expect(textOf(sectionOf(told(hostile), 'intake'))).toContain('␛[2J<b>x</b>');
  });

  it('says all of it in Arabic too', () => {
    const { owner, technical } = makeDocument(told('T-17'), 'ar');
    const titles = [...owner, ...technical.sections]
      .filter(({ id }) => id === 'brought' || id === 'intake')
      .map(({ title }) => plain(title));
    const { job } = reportLanguages.ar.shared;
    expect(titles).toEqual([job.broughtTitle, job.title]);
    const said = catalogueStrings([owner, technical]).map((text) => text.replaceAll('SHA-256', ''));
    expect(
      said.filter((text) => /[A-Za-z]/u.test(text) && !/JCGM|Fisher|\bp\b/u.test(text)),
    ).toEqual([]);
  });
});
