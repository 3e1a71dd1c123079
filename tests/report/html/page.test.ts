// The page as a whole: what it is made of is fixed, so that a change of one word or tag is seen and meant.
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { renderHtml } from '../../../src/report/html/render-html.js';
import { makeDocument } from '../make-report.js';
import { eventful } from '../session-events.js';

const page = renderHtml(makeDocument(eventful), '0.0.0');
const arabic = renderHtml(makeDocument(eventful, 'ar'), '0.0.0');

/** One tag a line, without the style sheet, so that a difference can be read. */
const normalised = (html: string): string =>
  html.replace(/<style>.*?<\/style>/su, '<style></style>').replaceAll('><', '>\n<');

describe('page', () => {
  it('should be as it was', async () => {
    await expect(normalised(page)).toMatchFileSnapshot('./eventful-en.golden');
    await expect(normalised(arabic)).toMatchFileSnapshot('./eventful-ar.golden');
  });

  it('should allow nothing but its own style sheet', () => {
    const [, policy = ''] = /Content-Security-Policy" content="([^"]*)"/u.exec(page) ?? [];
    const [, style = ''] = /<style>(.*?)<\/style>/su.exec(page) ?? [];
    const hash = createHash('sha256').update(style).digest('base64');
    expect(style.length).toBeGreaterThan(1000);
    expect(policy.replaceAll('&#39;', "'")).toBe(
      `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`,
    );
  });

  it('should hold nothing that would be fetched, run or sent', () => {
    for (const html of [page, arabic]) {
      expect(html).not.toMatch(/<(script|img|iframe|object|embed|link|form|audio|video|base)\b/u);
      expect(html).not.toMatch(/\s(style|on\w+|src|srcset|action)=/u);
      expect(html).not.toMatch(/url\(|@import|https?:/u);
      for (const [, target] of html.matchAll(/href="([^"]*)"/gu))
        expect(target).toMatch(/^#mark-/u);
    }
  });

  it('should say its language and direction', () => {
    expect(page).toContain('<html lang="en" dir="ltr">');
    expect(arabic).toContain('<html lang="ar" dir="rtl">');
  });

  it('should set names and figures apart from the direction of the text', () => {
    expect(arabic).toContain('<bdi class="name" dir="ltr">D0_P</bdi>');
    expect(arabic).toContain('<bdi class="value" dir="ltr">389.6(13) Ω</bdi>');
    expect(arabic).toContain('<bdi class="text" dir="auto">White residue beside R12</bdi>');
  });
});
