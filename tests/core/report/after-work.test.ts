// What the first page says of a repair, and what it must not.
import { describe, expect, it } from 'vitest';
import { plain } from '../../../src/core/words/report-phrase.js';
import { makeDocument } from '../../report/make-report.js';
import { recheckOf, reworked } from '../../report/reworked-session.js';
import { eventful } from '../../report/session-events.js';

const page = (...args: Parameters<typeof makeDocument>) => {
  const { summary, owner, technical } = makeDocument(...args);
  const section = (id: string): string =>
    owner
      .filter((found) => found.id === id)
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) =>
        block.kind === 'text'
          ? [plain(block.text)]
          : block.kind === 'list'
            ? block.items.map(({ text }) => plain(text))
            : [],
      )
      .join(' ');
  return { tone: summary.tone, headline: plain(summary.headline), section, technical, summary };
};

const proven = 'Repaired: the faults that were found read well when measured again.';

describe('the first page after rework', () => {
  it('should call a job repaired where a good recheck after the last work bears it out', () => {
    const { tone, headline, section } = page(reworked('note'), 'en', [recheckOf('good')]);
    expect([tone, headline]).toEqual(['sound', proven]);
    expect(section('checked')).toContain('Measured again after the work, 2 of 2 places: good');
    expect(section('done')).toContain('FL1: reflowed, 32.0 s under heat in all.');
    expect(section('unchecked')).not.toContain('no function test is recorded');
  });

  it('should give the cause as the technician noted it, and count a part on two lines once', () => {
    const recheck = recheckOf('good');
    const { compared } = recheck;
    if (compared === null) throw new Error('not compared');
    const twice = {
      ...recheck,
      compared: {
        ...compared,
        press: [...compared.press, { line: 'D0_N', part: 'FL1', outcome: 'stays' as const }],
      },
    };
    const { section } = page(reworked('note', 'FL1 pad 1'), 'en', [twice]);
    expect(section('failed')).toContain('Cause, as the technician found it: FL1 pad 1.');
    expect(section('checked')).toContain('The place that was loose was pressed again');
    expect(page(reworked('note', 'FL1 pad 1'), 'ar', [twice]).section('failed')).toContain(
      'FL1 pad 1',
    );
  });

  it.each([
    ['no recheck', [], 'not measured again'],
    ['a recheck older than the work', [recheckOf('good', 1250)], 'older than the last work'],
    ['a recheck that was left', [recheckOf(null)], 'not measured again'],
    ['a warm board', [recheckOf('wait')], 'warm or wet'],
    ['a bad recheck', [recheckOf('bad')], 'was not good'],
    ['half a recheck', [recheckOf('incomplete')], 'not complete'],
  ] as const)('should not call it proven on %s, and say why', (_, rechecks, why) => {
    const { tone, headline, section } = page(reworked('note'), 'en', rechecks);
    expect(tone).toBe('doubt');
    expect(headline).not.toBe(proven);
    expect(section('unchecked')).toContain(why);
  });

  it('should not call it proven when the device does not work', () => {
    const events = reworked('note').map((event) =>
      event.type === 'function-tested' ? { ...event, works: 'no' as const } : event,
    );
    expect(page(events, 'en', [recheckOf('good')]).headline).not.toBe(proven);
  });

  it('should say that the tally is from before, and keep the time of the measuring', () => {
    const { summary } = page(reworked('note'), 'en', [recheckOf('good')]);
    expect(plain(summary.tally)).toMatch(/^Before the work: /u);
    const about = (events: typeof eventful) => makeDocument(events).about.map(plain);
    expect(about(reworked('note'))).toEqual(about(eventful));
  });

  it('should have the same sections in every language, and leave them out where nothing was done', () => {
    const ids = (...args: Parameters<typeof makeDocument>): string[] =>
      makeDocument(...args).technical.sections.map(({ id }) => id);
    expect(ids(reworked('note'), 'en', [recheckOf('good')])).toEqual(
      ids(reworked('note'), 'ar', [recheckOf('good')]),
    );
    expect(ids(reworked('note'), 'en', [recheckOf('good')])).toEqual(
      expect.arrayContaining(['rework', 'recheck', 'tests']),
    );
    for (const id of ['rework', 'recheck', 'tests']) expect(ids(eventful)).not.toContain(id);
  });

  it('should leave no English word in the Arabic report', () => {
    const strings = (value: unknown, key = ''): string[] => {
      if (typeof value === 'string') {
        return ['text', 'title', 'small', 'label', 'caption', 'word', 'headline'].includes(key) ||
          key === ''
          ? [value]
          : [];
      }
      if (Array.isArray(value)) return value.flatMap((one) => strings(one));
      if (typeof value !== 'object' || value === null || 'as' in value) return [];
      return Object.entries(value).flatMap(([name, of]) =>
        ['id', 'kind', 'tone', 'verdict', 'as', 'language', 'direction'].includes(name)
          ? []
          : strings(of, name),
      );
    };
    const { owner, technical } = makeDocument(reworked('1'), 'ar', [recheckOf('good')]);
    const later = technical.sections.filter(({ id }) =>
      ['rework', 'recheck', 'tests'].includes(id),
    );
    const said = strings([...owner, ...later]);
    expect(said.length).toBeGreaterThan(60);
    expect(said.filter((text) => /[A-Za-z]{2}/u.test(text))).toEqual([]);
  });
});
