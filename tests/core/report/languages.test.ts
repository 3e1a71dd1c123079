// Every language says everything, in its own script; figures and names stay as they are.
import { describe, expect, it } from 'vitest';
import { arabicCount } from '../../../src/core/words/arabic-count.js';
import { reportLanguageCodes, reportLanguages } from '../../../src/core/words/report-languages.js';
import { catalogueStrings } from '../../report/catalogue-strings.js';
import { makeDocument } from '../../report/make-report.js';
import { passedOn } from '../../report/passed-on-session.js';
import { recheckOf, reworked } from '../../report/reworked-session.js';

/** The keys of a catalogue, through all its parts. */
const keysOf = (value: unknown, path = ''): string[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, of]) => keysOf(of, `${path}.${key}`))
    : [path];

/** Names of standards and signs that no language translates. */
const untranslated = /SHA-256|JCGM|Fisher, The Design of Experiments|\bp\b/gu;

describe('report languages', () => {
  it('should be English, Arabic and German, each under its own code', () => {
    expect(reportLanguageCodes).toEqual(['en', 'ar', 'de']);
    for (const code of reportLanguageCodes) {
      expect(reportLanguages[code].shared.language).toBe(code);
    }
    expect(reportLanguages.en.shared.direction).toBe('ltr');
    expect(reportLanguages.ar.shared.direction).toBe('rtl');
  });

  it.each(reportLanguageCodes)('should say the same things in each: %s', (code) => {
    expect(keysOf(reportLanguages[code]).sort()).toEqual(keysOf(reportLanguages.en).sort());
  });

  it('should leave no English word on the German first page', () => {
    const leaves = (of: unknown, path = ''): (readonly [string, string])[] =>
      typeof of === 'string'
        ? [[path, of]]
        : typeof of === 'object' && of !== null
          ? Object.entries(of).flatMap(([key, value]) => leaves(value, `${path}.${key}`))
          : [];
    const { shared, owner } = reportLanguages.de;
    const english = new Map(
      leaves({ shared: reportLanguages.en.shared, owner: reportLanguages.en.owner }),
    );
    const german = leaves({ shared, owner });
    expect(german.length).toBeGreaterThan(120);
    const alike = german.filter(([path, text]) => english.get(path) === text);
    // Signs, standards, and words that are the same in both.
    const same = [', ', ' → ', 'ltr', 'SHA-256', 'Bytes', 'normal', 'Pin', 'E'];
    expect(alike.filter(([, text]) => !same.includes(text))).toEqual([]);
    const texts = makeDocument(reworked('note'), 'de', [recheckOf('good')]).owner;
    const said = catalogueStrings(texts).join(' ');
    expect(said).toContain('Ursache nach Befund des Technikers');
    expect(said).not.toMatch(/\b(the|were|and|not|of)\b/u);
  });

  it('should take the technical pages of another where a language has none', () => {
    const { direction, language, technical } = makeDocument(passedOn, 'de');
    expect([language, direction]).toEqual(['de', 'ltr']);
    expect(technical.language).toBe('en');
  });

  it('should have the same sections in each', () => {
    const ids = (code: (typeof reportLanguageCodes)[number]): string[] => {
      const { owner, technical } = makeDocument(passedOn, code);
      return [...owner, ...technical.sections].map(({ id }) => id);
    };
    expect(ids('ar')).toEqual(ids('en'));
    expect(new Set(ids('en')).size).toBe(ids('en').length);
  });

  it('should leave no English word in the Arabic report', () => {
    const said = catalogueStrings(makeDocument(passedOn, 'ar')).map((text) =>
      text.replaceAll(untranslated, ''),
    );
    expect(said.length).toBeGreaterThan(200);
    expect(said.filter((text) => /[A-Za-z]/u.test(text))).toEqual([]);
  });
});

describe('Arabic counted nouns', () => {
  const pins = { one: 'طرف واحد', two: 'طرفان', few: 'أطراف', many: 'طرفًا', other: 'طرف' };

  // The classes are those of the Unicode CLDR plural rules for Arabic, here from memory.
  it.each([
    [1, 'طرف واحد'],
    [2, 'طرفان'],
    [3, '3 أطراف'],
    [10, '10 أطراف'],
    [11, '11 طرفًا'],
    [40, '40 طرفًا'],
    [99, '99 طرفًا'],
    [100, '100 طرف'],
    [103, '103 أطراف'],
    [0, '0 طرف'],
  ])('should count %d', (n, says) => {
    expect(arabicCount(n, pins)).toBe(says);
  });
});
