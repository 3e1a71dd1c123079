import fc from 'fast-check';
import { marked } from 'marked';
import { describe, expect, it } from 'vitest';
import type { ReportLanguage } from '../../../src/core/words/report-languages.js';
import { codeSpan, escapeMarkdown } from '../../../src/report/markdown/escape-markdown.js';
import { renderMarkdown } from '../../../src/report/markdown/render-markdown.js';
import { attacks, hostileSession } from '../hostile-session.js';
import { makeDocument } from '../make-report.js';
import { eventful } from '../session-events.js';

const markdown = (text: string, language: ReportLanguage = 'en'): string =>
  renderMarkdown(makeDocument(hostileSession(text), language));

/** What a reader of GitHub's dialect makes of it. Names may stand as code or as text: their tags do not count. */
const tags = (text: string): readonly string[] =>
  (marked.parse(text, { async: false, gfm: true }).match(/<[^>]*>/gu) ?? []).filter(
    (tag) => !/^<\/?code>$/u.test(tag),
  );

describe('report as Markdown', () => {
  it('should be as it was', async () => {
    await expect(renderMarkdown(makeDocument(eventful))).toMatchFileSnapshot(
      './eventful-en.golden',
    );
  });

  it('should have a table with a row for each pin', () => {
    const html = marked.parse(renderMarkdown(makeDocument(eventful)), { async: false });
    expect(html.match(/<table>/gu)?.length).toBeGreaterThan(4);
    expect(html).toContain('<code>389.6(13) Ω</code>');
    expect(html).toContain('White residue beside R12');
  });

  it('should set names and figures apart in Arabic', () => {
    expect(renderMarkdown(makeDocument(eventful, 'ar'))).toContain('\u2066`389.6(13) Ω`\u2069');
    expect(renderMarkdown(makeDocument(eventful))).not.toMatch(/\p{Bidi_Control}/u);
  });

  const harmless = tags(markdown('harmless'));

  it.each(attacks)('should make hostile text inert: %j', (text) => {
    expect(tags(markdown(text))).toEqual(harmless);
  });

  it('should make any text inert', () => {
    const texts = fc.oneof(
      fc.string({ unit: fc.constantFrom(...'\\`*_{}[]<>()#+-.!|~&@:=$^/w ax1') }),
      fc.string({ unit: 'binary', maxLength: 40 }),
    );
    fc.assert(
      fc.property(texts, (text) => {
        expect(tags(markdown(`a${text}`))).toEqual(harmless);
      }),
      { seed: 6, numRuns: 30 },
    );
  });
});

describe('escapeMarkdown and codeSpan', () => {
  it('should come back as they were', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'\\`*_{}[]<>()#+-.!|~&@:=$^a1') }),
        (text) => {
          for (const written of [escapeMarkdown(`a${text}`), codeSpan(`a${text}`)]) {
            const html = marked.parseInline(written, { async: false });
            const shown = html
              .replace(/<\/?code>/gu, '')
              .replaceAll('&lt;', '<')
              .replaceAll('&gt;', '>')
              .replaceAll('&quot;', '"')
              .replaceAll('&#39;', "'")
              .replaceAll('&amp;', '&');
            expect(shown).toBe(`a${text}`);
          }
        },
      ),
      { seed: 7 },
    );
  });
});
