import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOfMark, linesOfQuestion, shownPoints } from '../../../src/core/drill/drill-lines.js';
import { readResult, resultOf } from '../../../src/core/drill/drill-result.js';
import { askedAt, beginDrill, pointsOf, takeAnswer } from '../../../src/core/drill/drill-run.js';
import { planDrill } from '../../../src/core/drill/plan-drill.js';
import type { DrillQuestion } from '../../../src/core/drill/question.js';
import { decodeLine } from '../../../src/core/event-line.js';
import type { EventOf, Numbered } from '../../../src/core/events.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { english } from '../../../src/core/words/english.js';

const eventsOf = (name: string): Numbered[] => {
  const path = new URL(`../../../recordings/sessions/${name}.jsonl`, import.meta.url);
  return readFileSync(fileURLToPath(path), 'utf8')
    .trim()
    .split('\n')
    .flatMap((line, at) => {
      const decoded = decodeLine(line, at + 1);
      return decoded.known ? [decoded.event] : [];
    });
};

const all = ['verdict', 'press', 'part', 'finding', 'cause'] as const;
const loose = eventsOf('loose-filter');
const opened = loose[0] as EventOf<'session-opened'>;
const questions = planDrill({ asks: [...all], pins: 'findings-and-as-many' }, opened, loose);
const of = <K extends DrillQuestion['kind']>(kind: K) =>
  questions.filter(
    (question): question is Extract<DrillQuestion, { kind: K }> => question.kind === kind,
  );

describe('the questions of a drill', () => {
  it('should be asked before the event that gives the answer away', () => {
    expect(questions.length).toBeGreaterThan(10);
    for (const { kind, at, pin, line } of questions) {
      const told = loose.slice(0, at);
      if (kind === 'verdict') {
        expect(told.some((event) => event.type === 'pin-judged' && event.pin === pin)).toBe(false);
        expect(loose[at]).toMatchObject({ type: 'pin-judged', pin });
      }
      if (kind === 'part') expect(loose[at]).toMatchObject({ type: 'press-begun', line });
      if (kind === 'finding') expect(loose[at]).toMatchObject({ type: 'press-judged', line });
      if (kind === 'cause') expect(loose[at]).toMatchObject({ type: 'suspects-ranked' });
    }
  });

  it('should come in the order of the session', () => {
    const places = questions.map(({ at }) => at);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('should ask every pin that is not normal, the silent ones that should be, and some others', () => {
    const best = of('verdict').map((question) => question.best[0]);
    expect(best.filter((verdict) => verdict === 'open')).toHaveLength(2);
    const silent = loose.flatMap((event) =>
      event.type === 'pin-judged' && event.expected === 'overload' ? [event.pin] : [],
    );
    const asked = of('verdict').map(({ pin }) => pin);
    expect(silent.length).toBeGreaterThan(0);
    expect(asked).toEqual(expect.arrayContaining(silent));
    expect(best.filter((verdict) => verdict === 'normal').length).toBeGreaterThanOrEqual(6);
  });

  it('should ask all pins where that is wanted', () => {
    const every = planDrill({ asks: ['verdict'], pins: 'all' }, opened, loose);
    expect(every).toHaveLength(40);
  });

  it('should know what pressing found, and where', () => {
    expect(of('press').map(({ line, best }) => [line, best])).toEqual([
      ['LANE1_P', ['press']],
      ['LANE1_N', ['press']],
    ]);
    const [first] = of('part');
    expect(first?.best).toEqual(['FL2']);
    expect(first?.choices).toEqual(expect.arrayContaining(['FL2', 'TV1']));
    expect(first?.way).toEqual([
      { name: 'TV1', is: 'branch' },
      { name: 'FL2', is: 'part' },
      { name: 'U5', is: 'chip' },
    ]);
    expect(of('finding').map(({ part, best }) => [part, best[0]])).toEqual([
      ['FL2', 'loose'],
      ['bare-board', 'steady-open'],
      ['FL2', 'loose'],
      ['bare-board', 'steady-open'],
    ]);
    expect(of('cause').map(({ best }) => best)).toEqual([['FL2']]);
  });

  it('should hold the right answer among the choices, once each', () => {
    for (const { choices, best, fair } of questions) {
      expect(new Set(choices).size).toBe(choices.length);
      expect(best.every((answer) => choices.includes(answer))).toBe(true);
      expect(fair.every((answer) => choices.includes(answer) && !best.includes(answer))).toBe(true);
    }
  });

  it('should say that a steady low line is not to be pressed', () => {
    const leaky = eventsOf('shifted-leaky');
    const asked = planDrill(
      { asks: ['press'], pins: 'all' },
      leaky[0] as EventOf<'session-opened'>,
      leaky,
    );
    expect(asked.map(({ line, best }) => [line, best])).toEqual([['LANE2_P', ['go-on']]]);
  });
});

describe('a drill being done', () => {
  const last = Number.MAX_SAFE_INTEGER;

  it('should give a point for each right answer, half for a fair one, none for others', () => {
    let run = beginDrill(questions);
    for (const { best } of questions) {
      run = { ...takeAnswer(run, last, best[0] ?? ''), explaining: false };
    }
    expect(pointsOf(run)).toBe(questions.length);
    const finding = of('finding').find(({ fair }) => fair.length > 0) as DrillQuestion;
    expect(pointsOf(takeAnswer(beginDrill([finding]), last, finding.fair[0] ?? ''))).toBe(0.5);
    expect(pointsOf(takeAnswer(beginDrill([finding]), last, 'cracked'))).toBe(0);
  });

  it('should take no answer before the question, none that is no choice, and none while it explains', () => {
    const [first] = questions;
    if (first === undefined) throw new Error('no question');
    const run = beginDrill(questions);
    expect(askedAt(run, first.at - 1)).toBeNull();
    expect(takeAnswer(run, first.at - 1, first.best[0] ?? '')).toBe(run);
    expect(takeAnswer(run, first.at, 'whatever')).toBe(run);
    const answered = takeAnswer(run, first.at, first.best[0] ?? '');
    expect(answered.explaining).toBe(true);
    expect(takeAnswer(answered, last, questions[1]?.best[0] ?? '')).toBe(answered);
  });

  it('should keep points between none and one a question, whatever is answered', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(9), { minLength: 1, maxLength: 30 }), (picks) => {
        let run = beginDrill(questions);
        for (const pick of picks) {
          const asked = askedAt(run, last);
          if (asked === null) break;
          const choice = asked.choices[pick % asked.choices.length] ?? '';
          run = { ...takeAnswer(run, last, choice), explaining: false };
        }
        expect(run.marked).toHaveLength(Math.min(picks.length, questions.length));
        expect(pointsOf(run)).toBeGreaterThanOrEqual(0);
        expect(pointsOf(run)).toBeLessThanOrEqual(run.marked.length);
      }),
    );
  });

  it('should be kept as a line that can be read again, and nothing else can', () => {
    const run = takeAnswer(beginDrill(questions), last, questions[0]?.best[0] ?? '');
    const result = resultOf('loose-filter', run, '2026-01-31T10:00:00Z');
    expect(readResult(JSON.stringify(result))).toEqual(result);
    expect(result).toMatchObject({ points: 1, of: questions.length });
    expect(readResult('{"format":"pinwalk-drill-result/1"}')).toBeNull();
    expect(readResult('not json')).toBeNull();
  });
});

describe('the words of a drill', () => {
  const state = openWalk(opened);

  it('should ask with what was read and never with the answer', () => {
    const open = of('verdict').find(({ best }) => best[0] === 'open') as DrillQuestion;
    const { sight, ask, choices } = linesOfQuestion(open, state, english);
    expect(`${sight} ${ask}`).toMatch(
      /^Pin 5, LANE1_P reads overload; .* expected\. What is this line\?$/u,
    );
    expect(choices[4]).toBe('open');
  });

  it('should explain from the session', () => {
    const [finding] = of('finding');
    if (finding === undefined) throw new Error('no finding');
    const [mark, why] = linesOfMark(
      { question: finding, answer: 'steady', points: 0 },
      state,
      english,
    );
    expect(mark).toBe('No.');
    expect(why).toContain('loose joint, over 4 presses. Chance alone does so in about 14 of 1,000');
  });

  it('should show the way along the line before it asks what to press, and say what a wrong part is', () => {
    const [part] = of('part');
    if (part === undefined) throw new Error('no part asked');
    expect(linesOfQuestion(part, state, english).sight).toBe(
      'Pin 5, LANE1_P is to be pressed. From the pin inwards: TV1 (a branch to ground), then FL2, then U5.',
    );
    const whyOf = (answer: string): string =>
      linesOfMark({ question: part, answer, points: 0 }, state, english)[1];
    expect(whyOf('TV1')).toContain('TV1 is only a branch');
    expect(whyOf('C71')).toContain('C71 is not on this line');
    expect(whyOf('FL2')).toBe('FL2 lies in the way of LANE1_P, and pressing it brought an answer.');
  });

  it('should say what bare board is pressed for', () => {
    const bare = of('finding').find(({ part }) => part === 'bare-board') as DrillQuestion;
    const [, why] = linesOfMark({ question: bare, answer: 'loose', points: 0 }, state, english);
    expect(why).toContain('it is not the board that bends');
  });

  it('should say why a line that reads next to nothing, or nothing at all, can be normal', () => {
    const easy = eventsOf('healthy-board');
    const asked = planDrill(
      { asks: ['verdict'], pins: 'all' },
      easy[0] as EventOf<'session-opened'>,
      easy,
    );
    const whyOf = (line: string, answer: string): string => {
      const question = asked.find((each) => each.line === line);
      if (question === undefined) throw new Error(`${line} is not asked`);
      return linesOfMark({ question, answer, points: 0 }, state, english)[1];
    };
    expect(whyOf('GND', 'short')).toContain('joined to ground by design');
    expect(whyOf('AUX_P', 'open')).toContain('A capacitor in the way');
    expect(whyOf('LANE0_P', 'low')).toContain('It lies between the limits');
  });

  it('should keep a hostile name from the terminal', () => {
    const hostile = { ...(of('verdict')[0] as DrillQuestion), line: 'A\u001b[2J\u202eB' };
    const { sight } = linesOfQuestion(hostile, state, english);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: their absence is what is meant
    expect(sight).not.toMatch(/[\u0000-\u001f\u202e]/u);
  });

  it('should show points with one decimal at most', () => {
    expect([shownPoints(3), shownPoints(2.5)]).toEqual(['3', '2.5']);
  });
});
