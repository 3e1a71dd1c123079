// Text from elsewhere is inert: whatever it is, the page has the very tags it has with a harmless text.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReportLanguage } from '../../../src/core/words/report-languages.js';
import { escapeHtml } from '../../../src/report/html/escape-html.js';
import { renderHtml } from '../../../src/report/html/render-html.js';
import { attacks, hostileSession } from '../hostile-session.js';
import { makeDocument } from '../make-report.js';

const page = (text: string, language: ReportLanguage = 'en'): string =>
  renderHtml(makeDocument(hostileSession(text), language), '0.0.0');

/** Tags with their attributes; a name's class tells of its length only, and the generator is our own text. */
const tags = (html: string): readonly string[] =>
  (html.replace(/<style>.*?<\/style>/su, '').match(/<[^>]*>/gu) ?? []).map((tag) =>
    tag.replace('class="name long"', 'class="name"'),
  );

describe('hostile text in a page', () => {
  const harmless = { en: tags(page('harmless')), ar: tags(page('harmless', 'ar')) };

  it('should stand in a page of many tags', () => {
    expect(harmless.en.length).toBeGreaterThan(500);
  });

  it.each(attacks)('should be inert: %j', (text) => {
    expect(tags(page(text))).toEqual(harmless.en);
    expect(tags(page(text, 'ar'))).toEqual(harmless.ar);
  });

  it('should be inert whatever it is', () => {
    const grams = fc.oneof(
      fc.constantFrom(...attacks),
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.string({ unit: fc.constantFrom('<', '>', '"', "'", '&', '`', '/', '=', '-', ' ', 'a') }),
    );
    const texts = fc.array(grams, { minLength: 1, maxLength: 3 }).map((all) => `a${all.join('')}`);
    fc.assert(
      fc.property(texts, (text) => {
        expect(tags(page(text))).toEqual(harmless.en);
      }),
      { seed: 5, numRuns: 40 },
    );
  });

  it('should carry no character that acts on a reader or a terminal', () => {
    const acting = /(?!\n)[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/u;
    expect('a\u202e').toMatch(acting);
    for (const text of attacks) expect(page(text)).not.toMatch(acting);
  });

  it('should still be readable', () => {
    const shown = escapeHtml('<b>&"');
    expect(page('<b>&"')).toContain(shown);
    expect(page('زجاج مكسور')).toContain('زجاج مكسور');
  });
});
