// What the first page may say, and what it must not: each sentence only where the session supports it.
import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import type { Block, ReportDocument, Section } from '../../../src/core/report/document.js';
import type { Verdict } from '../../../src/core/verdict.js';
import { plain } from '../../../src/core/words/report-phrase.js';
import { makeDocument } from '../../report/make-report.js';
import { eventful, judged, opened, profile, settled } from '../../report/session-events.js';

const pins = profile.connector.pins.map(({ pin }) => pin);
const bounds = { nominal: 100, low: 90, high: 110 };

/** A session in which each pin was touched once and judged so. */
const walked = (
  verdicts: readonly Verdict[],
  header: Partial<EventOf<'session-opened'>> = {},
): readonly WalkEvent[] => [
  { ...opened, ...header },
  ...verdicts.flatMap((verdict, at): WalkEvent[] => {
    const pin = pins[at] ?? '';
    const t = 1 + at;
    const value = verdict === 'open' ? null : 100;
    return verdict === 'unread'
      ? []
      : [
          settled({ t, touch: at, pin, value, u: 1 }),
          judged(t, pin, verdict, { expected: bounds }),
        ];
  }),
];

const all = (verdict: Verdict): Verdict[] => pins.map(() => verdict);
const but = (at: number, verdict: Verdict): Verdict[] => all('normal').with(at, verdict);

const textOf = (block: Block): string => {
  switch (block.kind) {
    case 'text':
      return plain(block.text);
    case 'list':
      return block.items
        .map(({ text, small }) => `${plain(text)} ${small === undefined ? '' : plain(small)}`)
        .join('\n');
    default:
      throw new Error(`the first page has no ${block.kind}`);
  }
};
const sectionText = (document: ReportDocument, id: string): string => {
  const section = document.owner.find((one: Section) => one.id === id);
  return section === undefined ? '' : section.blocks.map(textOf).join('\n');
};

describe('headline', () => {
  it.each<[string, Verdict[], string, string]>([
    ['all normal', all('normal'), 'sound', 'Nothing wrong was found at the 8 pins'],
    ['one open', but(1, 'open'), 'fault', '1 of 8 pins does not read'],
    ['one low, one short', but(1, 'low').with(2, 'short'), 'fault', '2 of 8 pins do not read'],
    ['undecided', but(1, 'unsure').with(2, 'wobble'), 'doubt', '2 of 8 pins could not be decided'],
    [
      'left out',
      but(7, 'unread'),
      'doubt',
      '7 pins were measured and nothing wrong was found there; 1 was not measured',
    ],
    ['nothing', all('unread'), 'doubt', 'Nothing has been measured yet.'],
    [
      'a fault beside doubt',
      but(1, 'high').with(2, 'unsure'),
      'fault',
      '1 of 8 pins does not read',
    ],
  ])('should say what was found: %s', (_name, verdicts, tone, says) => {
    const { summary } = makeDocument(walked(verdicts));
    expect(summary.tone).toBe(tone);
    expect(plain(summary.headline)).toContain(says);
  });

  it('should say that normal is what is seen from the connector', () => {
    expect(plain(makeDocument(walked(all('normal'))).summary.headline)).toContain(
      'as seen from this connector',
    );
  });
});

describe('first page', () => {
  it('should say on top that readings are simulated, recorded, or a profile invented', () => {
    const titles = (header: Partial<EventOf<'session-opened'>>): string[] =>
      makeDocument(walked(all('normal'), header)).notices.map(({ title }) => plain(title));
    expect(titles({})).toEqual([]);
    expect(titles({ simulated: true })).toEqual(['Simulated readings.']);
    expect(titles({ link: 'log:readings.jsonl' })).toEqual(['From a recording.']);
    const demo = { ...opened.profile, content: { ...profile, demo: true } };
    expect(titles({ profile: demo })).toEqual(['Invented profile.']);
  });

  it('should say that readings are simulated where the bench over a wire named itself', () => {
    const titles = (text: string): string[] => {
      const says = { type: 'meter-spoke', t: 0, says: 'identity', text } as const;
      const [first, ...rest] = walked(all('normal'));
      return makeDocument([first as WalkEvent, says, ...rest]).notices.map(({ title }) =>
        plain(title),
      );
    };
    expect(titles('PINWALK,VIRTUAL BENCH,0,1')).toEqual(['Simulated readings.']);
    expect(titles('ACME,DMM-1,0,1')).toEqual([]);
  });

  it('should say on top that a walk was not finished', () => {
    const stopped: readonly WalkEvent[] = [
      ...walked(all('normal').map((word, at) => (at < 3 ? word : 'unread'))),
      { type: 'pin-reached', t: 9, pin: '4', line: 'RESET' },
    ];
    const [notice] = makeDocument(stopped).notices;
    expect(plain(notice?.text ?? '')).toContain('5 of 8 pins');
  });

  it('should claim a repeat only where every faulty reading was taken again', () => {
    const repeated = 'was taken again and came out the same';
    expect(sectionText(makeDocument(eventful), 'why')).toContain(repeated);
    const once = makeDocument(walked(but(3, 'low')));
    expect(sectionText(once, 'why')).not.toContain(repeated);
    expect(sectionText(once, 'unchecked')).toContain(
      'Measured once only, though not normal: pin 4.',
    );
  });

  it('should claim that an open was confirmed only where it was', () => {
    const confirmed = 'the technician confirmed';
    expect(sectionText(makeDocument(eventful), 'why')).toContain(confirmed);
    expect(sectionText(makeDocument(walked(but(1, 'open'))), 'why')).not.toContain(confirmed);
  });

  it('should state the least confidence of the findings and never round it up', () => {
    const events = [
      ...walked(but(1, 'low')),
      judged(20, '2', 'low', { confidence: 0.99999, expected: bounds }),
    ];
    expect(sectionText(makeDocument(events), 'why')).toContain('> 99.9 %');
    const less = [...events, judged(21, '2', 'low', { confidence: 0.98999, expected: bounds })];
    expect(sectionText(makeDocument(less), 'why')).toContain('98.9 %');
  });

  it('should name each fault in plain words', () => {
    const fault = (verdict: Verdict, expected: EventOf<'pin-judged'>['expected']): string => {
      const value = verdict === 'open' ? null : 40;
      const events = [
        opened,
        settled({ t: 1, touch: 0, pin: '2', value, u: 1 }),
        judged(1, '2', verdict, { expected }),
      ];
      return sectionText(makeDocument(events), 'failed');
    };
    expect(fault('open', bounds)).toContain('no connection was found where a good board has one');
    expect(fault('open', null)).toContain('no connection was found.');
    expect(fault('short', bounds)).toContain('connected to ground almost directly');
    expect(fault('low', bounds)).toContain('lower than on a good board');
    expect(fault('high', bounds)).toContain('higher than on a good board');
    expect(fault('low', 'overload')).toContain(
      'a connection was found where a good board has none',
    );
    expect(fault('short', 'overload')).toContain('where a good board has none');
  });

  it('should count what a walk of some pins left out as not measured', () => {
    const some: readonly WalkEvent[] = [{ ...opened, pins: ['1', '2', '3'] }];
    expect(sectionText(makeDocument(some), 'unchecked')).toContain(
      'Not measured: pins 1, 2, 3, 4, 5, 6, 7, 8.',
    );
  });

  it('should list what could not be checked: unread, undecided, without expected value, silent by design', () => {
    const text = sectionText(makeDocument(eventful), 'unchecked');
    expect(text).toContain('no function test is recorded');
    expect(text).toContain('Not measured: pin 8.');
    expect(text).toContain('Not clear: pin 5.');
    expect(text).toContain('no good value is known: pin 7.');
    expect(text).toContain('a break would look the same: pin 6.');
  });

  it('should not claim measuring where there was none', () => {
    const empty = makeDocument([opened]);
    expect(empty.owner.map(({ id }) => id)).not.toContain('why');
    expect(sectionText(empty, 'done')).not.toContain('measured');
    expect(sectionText(empty, 'failed')).toContain('nothing can be said');
  });

  it('should tell of at most four faults and point to the rest', () => {
    const text = sectionText(makeDocument(walked(all('low'))), 'failed');
    expect(text.match(/^Pin /gmu)).toHaveLength(4);
    expect(text).toContain('4 more findings on the technical pages.');
  });

  it('should name a suspect only if it is likelier than all others together', () => {
    const ranked = eventful.findLast((event) => event.type === 'suspects-ranked');
    if (ranked?.type !== 'suspects-ranked') throw new Error('nothing ranked');
    const failed = (probability: number, over: object = {}): string => {
      const [first, ...rest] = ranked.suspects;
      if (first === undefined) throw new Error('no suspect');
      const event = { ...ranked, suspects: [{ ...first, probability, ...over }, ...rest] };
      return sectionText(makeDocument([...eventful, event]), 'failed');
    };
    expect(failed(0.81)).toContain(
      'Most likely place of the fault at pin 2: joint FL1 pad 1, with a probability of 81 %. For pin 4 the measurements alone name no single place.',
    );
    expect(failed(0.5)).not.toContain('Most likely');
    expect(failed(0.9, { where: 'lead', id: 'ground-clip' })).toContain('The device may be sound');
  });

  it('should tell of a press that answered, and not of bare board', () => {
    const text = sectionText(makeDocument(eventful), 'why');
    expect(text).toContain('Whenever part FL1 was pressed, the reading of D0_P came back');
    expect(text).not.toContain('bare-board');
  });
});
