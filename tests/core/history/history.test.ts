import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BoardCase, caseReader } from '../../../src/core/history/board-case.js';
import { shopPriors } from '../../../src/core/history/shop-priors.js';
import { tallyCases } from '../../../src/core/history/tally-cases.js';
import { shamPlace } from '../../../src/core/press/press-stage.js';
import { readProfile } from '../../support/read-profile.js';

const opened = {
  type: 'session-opened',
  format: 'pinwalk-session/1',
  simulated: false,
  profile: { id: 'demo', content: { id: 'demo' } },
};
const caseOf = (events: readonly object[], header: object = opened, begins = 'b1'): BoardCase => {
  const reader = caseReader(header as Readonly<Record<string, unknown>>, begins);
  for (const event of events) reader.take(event as Readonly<Record<string, unknown>>);
  return reader.done();
};
const press = (part: string | null, finding: string): object => ({
  type: 'press-judged',
  part,
  finding,
});
const ranked = (id: string, probability: number): object => ({
  type: 'suspects-ranked',
  suspects: [{ where: 'part', id, probability }],
});
const closed = (cause?: string): object => ({ type: 'job-closed', as: 'repaired', cause });
const symptom = (id: string, probability: number): object => ({
  type: 'groups-proposed',
  symptoms: [{ id, says: '…', probability }],
});

describe('what a session says of its board', () => {
  it('should be known as simulated by its header, or by what the meter calls itself', () => {
    const says = (text: string): object => ({ type: 'meter-spoke', says: 'identity', text });
    expect(caseOf([says('ACME,DMM-1,0,1')]).simulated).toBe(false);
    expect(caseOf([says('PINWALK,VIRTUAL BENCH,0,1')]).simulated).toBe(true);
    expect(caseOf([], { ...opened, simulated: true }).simulated).toBe(true);
  });

  it.each([
    [[closed('FL2'), press('FL1', 'loose'), ranked('U1', 0.9)], [['FL2', 'confirmed']]],
    [[press('FL1', 'loose'), press('FL2', 'steady'), ranked('U1', 0.9)], [['FL1', 'found']]],
    [[press('FL1', 'loose'), press('FL1', 'steady')], [['FL1', 'found']]],
    [[press(shamPlace, 'loose'), press(null, 'cracked')], []],
    [[ranked('U1', 0.9)], [['U1', 'suspected']]],
    [[ranked('U1', 0.3)], []],
    [[closed(), ranked('U1', 0.9)], [['U1', 'suspected']]],
    [[], []],
  ])('should take from %j the causes %j', (events, causes) => {
    expect([...caseOf(events).causes]).toEqual(causes);
  });

  it('should take the last symptom that stands out', () => {
    expect(caseOf([symptom('dark', 0.4), symptom('stripes', 0.8)]).symptom).toBe('stripes');
    expect(caseOf([symptom('dark', 0.4)]).symptom).toBeNull();
    expect(caseOf([]).symptom).toBeNull();
  });

  it('should know a recheck and a redacted session for the board they belong to', () => {
    expect(caseOf([], { ...opened, recheck: { of: { begins: 'first' } } }).board).toBe('first');
    expect(caseOf([], opened, 'own').board).toBe('own');
  });

  it.each([
    [{ type: 'press-judged' }],
    [{ type: 'press-judged', part: { toString: 1 }, finding: 'loose' }],
    [{ type: 'press-judged', part: 'x'.repeat(10_000), finding: 'loose' }],
    [{ type: 'suspects-ranked', suspects: 'many' }],
    [{ type: 'suspects-ranked', suspects: [null, { id: 'U1', probability: '0.9' }] }],
    [{ type: 'groups-proposed', symptoms: { 0: {} } }],
    [{ type: 'job-closed', cause: ['FL2'] }],
    [{ type: 7 }],
    [{}],
  ])('should pass over %j', (event) => {
    expect([...caseOf([event]).causes]).toEqual([]);
  });

  it.each([
    [{ ...opened, type: 'pin-judged' }, 'does not begin with a header'],
    [{ ...opened, format: 'pinwalk-session/9' }, 'reads "pinwalk-session/1"'],
    [{ ...opened, profile: { content: { id: 7 } } }, 'names no profile'],
    [{ ...opened, profile: null }, 'names no profile'],
  ])('should refuse the header %j', (header, says) => {
    expect(() => caseOf([], header)).toThrow(says);
  });
});

describe('what failed after which symptom', () => {
  it('should count every board once, with the best that is known of it', () => {
    const tally = tallyCases();
    tally.add(caseOf([symptom('dark', 0.9), press('FL2', 'loose')], opened, 'one'));
    tally.add(caseOf([closed('FL2')], { ...opened, recheck: { of: { begins: 'one' } } }));
    tally.add(caseOf([symptom('dark', 0.9), press('FL2', 'loose')], opened, 'two'));
    tally.add(caseOf([{ type: 'walk-finished' }, ranked('U1', 0.9)], opened, 'three'));
    tally.add(caseOf([], opened, 'four'));
    const counts = (confirmed: number, found: number, suspected: number): object => ({
      counts: { confirmed, found, suspected },
    });
    expect(tally.history()).toEqual({
      boards: [{ profile: 'demo', boards: 3, explained: 2 }],
      rows: [
        { profile: 'demo', symptom: 'dark', place: 'FL2', ...counts(1, 1, 0) },
        { profile: 'demo', symptom: null, place: 'U1', ...counts(0, 0, 1) },
      ],
    });
  });

  it('should keep a place named __proto__ among the others', () => {
    const tally = tallyCases();
    tally.add(caseOf([closed('__proto__')]));
    expect(tally.history().rows).toMatchObject([{ place: '__proto__', counts: { confirmed: 1 } }]);
    expect(({} as { confirmed?: number }).confirmed).toBeUndefined();
  });
});

describe('priors from the shop', () => {
  const text = readFileSync(new URL('../../../profiles/demo.json', import.meta.url), 'utf8');
  const { content: profile } = readProfile(text);
  if (profile === undefined) throw new Error('no demo profile');
  const learnedFrom = (faults: number, boards: number) => {
    const tally = tallyCases();
    for (let board = 0; board < boards; board += 1) {
      const event = board < faults ? closed('FL2') : { type: 'walk-finished' };
      tally.add(caseOf([event], opened, `b${board}`));
    }
    tally.add(caseOf([closed('the glue')], opened, 'odd'));
    return shopPriors(profile, tally.history());
  };
  const priorOfFl2 = (faults: number, boards: number): number =>
    learnedFrom(faults, boards)?.profile.parts?.FL2?.prior ?? Number.NaN;

  it('should move towards what was counted, the further the more boards there are', () => {
    const few = priorOfFl2(2, 9);
    const many = priorOfFl2(200, 999);
    expect(few).toBeGreaterThan(0.03);
    expect(few).toBeLessThan(many);
    // Mean of a beta distribution: within the shrinkage of 30 boards from 200 in 1000.
    expect(many).toBeGreaterThan((200 / 1030) * 0.99);
    expect(many).toBeLessThan(0.2);
    expect(priorOfFl2(999, 999)).toBe(0.5);
    expect(priorOfFl2(0, 999)).toBeLessThan(priorOfFl2(0, 9));
  });

  it('should give a profile that reads back, and say what it has no room for', () => {
    const learned = learnedFrom(2, 9);
    const { content, problems } = readProfile(JSON.stringify(learned?.profile));
    expect(problems.filter(({ level }) => level !== 'warning')).toEqual([]);
    expect(content?.parts?.FL2?.prior).toBe(learned?.priors[0]?.now);
    expect(learned?.priors[0]).toMatchObject({ place: 'FL2', faults: 2, boards: 10 });
    expect(learned?.unplaced).toEqual(['the glue']);
  });

  it('should say nothing where no board says anything', () => {
    expect(shopPriors(profile, tallyCases().history())).toBeNull();
  });
});
