// The page in a real browser: it shows itself and does nothing else, fits paper, reads from right to left where it
// should, and can be used without eyes. What runs inside the page is written as text: no types of a browser are
// known here.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { WalkEvent } from '../../src/core/events.js';
import type { ReportLanguage } from '../../src/core/words/report-languages.js';
import { renderHtml } from '../../src/report/html/render-html.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { type Browser, openBrowser } from './browser.js';
import { attacks, hostileSession } from './hostile-session.js';
import { longWalk } from './long-walk.js';
import { makeDocument } from './make-report.js';
import { passedOn } from './passed-on-session.js';
import { recheckOf, reworked } from './reworked-session.js';
import { eventful, opened } from './session-events.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser.close());

interface Shown {
  readonly page: Page;
  /** Console lines, page errors, dialogs. */
  readonly said: readonly string[];
  readonly requests: readonly string[];
  read(events: readonly WalkEvent[], language?: ReportLanguage): Promise<void>;
}

/** Whatever was worked on was walked again. */
const rechecksFor = (events: readonly WalkEvent[]): ReturnType<typeof recheckOf>[] =>
  events.some(({ type }) => type === 'rework-logged')
    ? [recheckOf('wait', 1300), recheckOf('good', 1400, attacks.join(' '))]
    : [];

const openPage = async (): Promise<Shown> => {
  const file = join(temporaryFolder(), 'report.html');
  const page = await browser.context.newPage();
  onTestFinished(() => page.close());
  const said: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(error.message));
  page.on('dialog', (dialog) => {
    said.push(dialog.message());
    void dialog.dismiss();
  });
  page.on('request', (request) => requests.push(request.url()));
  return {
    page,
    said,
    requests,
    read: async (events, language = 'en') => {
      writeFileSync(file, renderHtml(makeDocument(events, language, rechecksFor(events)), '0.0.0'));
      await page.goto(pathToFileURL(file).href);
    },
  };
};

const show = async (events: readonly WalkEvent[], language: ReportLanguage): Promise<Shown> => {
  const shown = await openPage();
  await shown.read(events, language);
  return shown;
};

/** What a full intake, the notices of the virtual bench and all of the later work put on the first page. */
const wholeJob: readonly WalkEvent[] = reworked('picture and touch').flatMap((event, at) =>
  at === 0 && event.type === 'session-opened'
    ? [
        { ...event, simulated: true },
        {
          type: 'intake-noted' as const,
          t: 0,
          ticket: 'T-104',
          device: 'Field instrument, demo world',
          symptom: 'Lamp lights, screen stays black',
          history: 'Display replaced elsewhere; worked for two weeks',
          seen: 'Flux around the filters',
          dataMatters: 'yes' as const,
        },
      ]
    : [event],
);

const sessions = {
  eventful,
  empty: [opened],
  long: longWalk(40),
  passedOn,
  hostile: hostileSession(attacks.join(' ')),
  reworked: reworked('Flux washed off'),
  whole: wholeJob,
  attacked: reworked(attacks.join(' '), '<script>document.title="hit"</script>'),
} as const;

const cases = [
  ['eventful', 'en', 8],
  ['eventful', 'ar', 8],
  ['empty', 'en', 8],
  ['long', 'en', 40],
  ['hostile', 'ar', 8],
  ['reworked', 'en', 8],
  ['reworked', 'ar', 8],
  ['whole', 'en', 8],
  ['whole', 'ar', 8],
  ['whole', 'de', 8],
  ['attacked', 'en', 8],
  ['passedOn', 'en', 8],
  ['passedOn', 'ar', 8],
] as const;

/** How far what is on the page reaches past its right or left edge, in pixels. */
const overhang = (page: Page): Promise<number> =>
  page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  ) as Promise<number>;

describe('page in a browser', () => {
  it.each(cases)(
    'should show itself in silence and ask for nothing: %s, %s',
    async (name, language, pins) => {
      const { page, said, requests } = await show(sessions[name], language);
      expect(await page.locator('h1').isVisible()).toBe(true);
      expect(await page.locator('.contact').count()).toBe(pins);
      expect(
        await page.evaluate('getComputedStyle(document.querySelector(".strip")).display'),
      ).toBe('flex');
      expect(said).toEqual([]);
      expect(requests).toEqual([page.url()]);
    },
  );

  it('should run no script, not even one that got in', async () => {
    const { page, said } = await show(eventful, 'en');
    await page.evaluate(
      'document.body.append(Object.assign(document.createElement("script"), { textContent: "document.title = `hit`" }))',
    );
    expect(await page.title()).not.toBe('hit');
    expect(said.join(' ')).toContain('Content Security Policy');
  });

  it.each(cases)('should be accessible: %s, %s', async (name, language) => {
    const { page } = await show(sessions[name], language);
    await page.evaluate(axe.source);
    const { violations, passes } = (await page.evaluate('axe.run()')) as axe.AxeResults;
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
    expect(passes.length).toBeGreaterThan(20);
  });

  it('should need no scrolling sideways at any width', async () => {
    for (const name of ['long', 'hostile', 'reworked', 'attacked'] as const) {
      const { page } = await show(sessions[name], 'en');
      for (const width of [320, 390, 768, 1400]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await overhang(page), `${name} at ${width}`).toBeLessThanOrEqual(0);
      }
    }
  });
});

/** The sheet in points, and what the page's margins (11, 13 and 13 mm) leave of it in CSS pixels. */
const papers = [
  { format: 'A4', points: [595, 842], room: { width: 695, height: 1032 } },
  { format: 'Letter', points: [612, 792], room: { width: 718, height: 965 } },
] as const;

describe.each(papers)('page on $format', ({ format, points, room }) => {
  // With every text at its longest after rework, the first page takes a second sheet.
  it.each(cases.filter(([name]) => name !== 'attacked'))(
    'should fit: %s, %s',
    async (name, language) => {
      const { page } = await show(sessions[name], language);
      const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      const boxes = [...pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/gu)];
      expect(boxes.length).toBeGreaterThanOrEqual(2);
      for (const [, width, height] of boxes) {
        expect(Math.abs(Number(width) - points[0])).toBeLessThan(2);
        expect(Math.abs(Number(height) - points[1])).toBeLessThan(2);
      }
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize(room);
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      if (name === 'hostile') return;
      await page.evaluate('document.querySelector(".technical").remove()');
      const alone = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      expect(alone.match(/\/Type\s*\/Page\b(?!s)/gu)).toHaveLength(1);
      const owner = await page.locator('.owner').boundingBox();
      expect(owner?.height).toBeGreaterThan(200);
      expect(owner?.height).toBeLessThanOrEqual(room.height);
    },
  );
});

const directions = `(() => {
  const one = (selector) => document.querySelector(selector);
  const left = (of) => of.getBoundingClientRect().left;
  const ascending = (of) => [...of].every((it, at) => at === 0 || left(of[at - 1]) < left(it));
  const cells = [...one('#pins tbody tr').children];
  return {
    page: getComputedStyle(one('main')).direction,
    name: getComputedStyle(one('#pins bdi.name')).direction,
    figure: getComputedStyle(one('#pins bdi.value')).direction,
    figureSetApart: getComputedStyle(one('#pins bdi.value')).unicodeBidi,
    labelsOnTheRight: left(one('#connector dt')) > left(one('#connector dd')),
    cellsFromTheRight: ascending(cells.reverse()),
    contactsFromTheLeft: [...document.querySelectorAll('.contacts')].every((row) => ascending(row.children)),
  };
})()`;

describe('Arabic page', () => {
  it('should run from right to left, with names, figures and contacts from left to right', async () => {
    const { page } = await show(eventful, 'ar');
    expect(await page.evaluate(directions)).toEqual({
      page: 'rtl',
      name: 'ltr',
      figure: 'ltr',
      figureSetApart: 'isolate',
      labelsOnTheRight: true,
      cellsFromTheRight: true,
      contactsFromTheLeft: true,
    });
  });
});

describe('a session passed on', () => {
  it('should say so at the top, in both languages, and draw the press at will', async () => {
    for (const language of ['en', 'ar'] as const) {
      const { page } = await show(passedOn, language);
      const notice = page.locator('.notices');
      expect(await notice.textContent()).toContain('e8a6 c792 aa64 f998');
      const direction = 'getComputedStyle(document.querySelector(".notices bdi")).direction';
      expect(await page.evaluate(direction)).toBe('ltr');
      expect(await page.locator('#free-press svg').count()).toBe(1);
      expect(await page.locator('#probed tbody tr').count()).toBe(2);
    }
  });
});

const whatGotIn = `({
  title: document.title.startsWith('hit'),
  foreign: document.querySelectorAll('script,img,iframe,a,b,i,h1:nth-of-type(2)').length,
  shown: getComputedStyle(document.body).display,
})`;

describe('hostile text in a browser', () => {
  it('should be text and nothing else', async () => {
    const { page, said, requests, read } = await openPage();
    for (const text of attacks) {
      await read(hostileSession(text));
      expect(await page.evaluate(whatGotIn), text).toEqual({
        title: false,
        foreign: 0,
        shown: 'block',
      });
    }
    expect(said).toEqual([]);
    expect(requests).toHaveLength(attacks.length);
  });
});
