import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { Evidence, Observation } from '../../../src/core/suspects/evidence.js';
import type { Posterior } from '../../../src/core/suspects/posterior.js';
import { type RankedSuspect, rankSuspects } from '../../../src/core/suspects/rank-suspects.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { faultWeigher, weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import type { Verdict } from '../../../src/core/verdict.js';
import { readProfile } from '../../support/read-profile.js';
import { smallBoard } from './small-board.js';

const { content: demo } = readProfile(readFileSync('profiles/demo.json', 'utf8'));
if (demo === null || demo === undefined) throw new Error('the demo profile does not read');
const model = buildModel(demo);
const weigh = faultWeigher(model);

interface Ranking {
  readonly suspects: readonly RankedSuspect[];
  readonly other: number;
}

const rankingOf = (posterior: Posterior): Ranking => ({
  suspects: rankSuspects(posterior, 0),
  other: posterior.other,
});
/** With nothing kept from one weighing to the next. */
const rankedOn = (board: SuspectModel, evidence: Evidence): Ranking =>
  rankingOf(weighFaults(board, evidence));
const ranked = (evidence: Evidence): Ranking => rankingOf(weigh(evidence));

/** The whole walk, all pins normal but those named; or only up to a pin. */
const walked = (abnormal: Readonly<Record<string, Verdict>>, upTo = '40'): Observation[] =>
  demo.connector.pins
    .slice(0, Number(upTo))
    .map(({ pin }) => ({ kind: 'pin', pin, verdict: abnormal[pin] ?? 'normal' }));

const probabilityOf = (ranking: Ranking, id: string, lines?: number): number =>
  ranking.suspects.find(
    (suspect) => suspect.id === id && (lines === undefined || suspect.lines.length === lines),
  )?.probability ?? 0;

describe('suspects on the demo board', () => {
  it('should put a filter before single joints where all its lines are open', () => {
    const ranking = ranked(walked({ 5: 'open', 6: 'open' }));
    const [first] = ranking.suspects;
    expect(first).toMatchObject({ where: 'part', id: 'FL2', lines: ['LANE1_P', 'LANE1_N'] });
    const joints = ranking.suspects.filter(({ where }) => where === 'joint');
    expect(first?.probability).toBeGreaterThan(
      5 * Math.max(...joints.map((one) => one.probability)),
    );
  });

  it('should put joints first where only one line of the filter is open', () => {
    const ranking = ranked(walked({ 5: 'open' }));
    expect(ranking.suspects[0]?.where).toBe('joint');
    expect(probabilityOf(ranking, 'FL2')).toBeLessThan(probabilityOf(ranking, 'FL2 pad 1'));
  });

  it('should say the leads first where grounds and lines are open together', () => {
    const ranking = ranked(walked({ 4: 'open', 5: 'open', 6: 'open', 7: 'open', 8: 'open' }, '8'));
    expect(ranking.suspects.slice(0, 2).map(({ where, id }) => `${where} ${id}`)).toEqual([
      'lead ground-clip',
      'lead walking-lead',
    ]);
    const leads = probabilityOf(ranking, 'ground-clip') + probabilityOf(ranking, 'walking-lead');
    expect(leads).toBeGreaterThan(0.99);
    const blamed = ranking.suspects[0]?.lines;
    expect(blamed).toContain('LANE1_P');
    expect(blamed).not.toContain('LANE0_P');
  });

  it('should clear the clip and keep the board when another ground changes nothing', () => {
    const opens = walked({ 4: 'open', 5: 'open', 6: 'open', 7: 'open' }, '7');
    const again: Observation = { kind: 'pin', pin: '7', verdict: 'open', clipMoved: true };
    const moved = ranked([...opens, again]);
    expect(moved.suspects[0]?.id).toBe('walking-lead');
    const mended = ranked([...opens, { ...again, verdict: 'normal' }]);
    expect(mended.suspects[0]?.id).toBe('ground-clip');
    // The walking lead may have come back by itself in the same moment.
    expect(mended.suspects[0]?.probability).toBeGreaterThan(0.9);
  });

  it('should blame no lead for one open line in the middle of a sound walk', () => {
    const ranking = ranked(walked({ 33: 'open' }));
    expect(ranking.suspects[0]).toMatchObject({ where: 'joint', id: 'J7 pin 33' });
    expect(probabilityOf(ranking, 'ground-clip')).toBeLessThan(0.03);
  });

  it('should keep a joint under suspicion behind a branch that reads near-normal', () => {
    // R42 alone reads 2.2 kΩ, within 12 % of the line's 2.07 kΩ; TOUCH_INT has no branch.
    const ranking = ranked(walked({}));
    const hidden = probabilityOf(ranking, 'R21 pad 1');
    const seen = probabilityOf(ranking, 'R23 pad 1');
    const before = probabilityOf(ranked([]), 'R21 pad 1');
    expect(hidden).toBeGreaterThan(0.7 * before);
    expect(hidden).toBeGreaterThan(3 * seen);
  });

  it('should find the part whose press brings the line back', () => {
    const press: Observation = { kind: 'press', line: 'LANE1_P', part: 'FL2', finding: 'loose' };
    const both = ranked([...walked({ 5: 'open', 6: 'open' }), press]);
    expect(both.suspects[0]).toMatchObject({ id: 'FL2' });
    expect(both.suspects[0]?.probability).toBeGreaterThan(0.9);
    const one = ranked([...walked({ 5: 'open' }), press]);
    const pads = probabilityOf(one, 'FL2 pad 1') + probabilityOf(one, 'FL2 pad 4');
    expect(pads).toBeGreaterThan(0.85);
  });

  it('should suspect a cracked joint on a line that reads normal until it is pressed', () => {
    const press: Observation = {
      kind: 'press',
      line: 'TOUCH_INT',
      part: 'R23',
      finding: 'cracked',
    };
    const ranking = ranked([...walked({}), press]);
    const sum = ['R23 pad 1', 'R23 pad 2', 'R23']
      .map((id) => probabilityOf(ranking, id))
      .reduce((total, one) => total + one, 0);
    // A press test that answers falsely is about half as likely as such a joint.
    expect(sum).toBeGreaterThan(0.6);
  });

  it('should hold a press for nothing once bare board answers too', () => {
    const pressed = (part: string): Observation => ({
      kind: 'press',
      line: 'LANE1_P',
      part,
      finding: 'loose',
    });
    const open = walked({ 5: 'open' });
    const part = ranked([...open, pressed('FL2')]);
    const both = ranked([...open, pressed('FL2'), pressed('bare board')]);
    expect(probabilityOf(part, 'J7 pin 5')).toBeLessThan(0.1);
    expect(both.suspects[0]).toMatchObject({ where: 'joint', id: 'J7 pin 5' });
  });

  it('should put a shared protection part first where all its lines are shorted', () => {
    const shorted = { 2: 'short', 3: 'short', 5: 'short', 6: 'short' } as const;
    const [first] = ranked(walked(shorted)).suspects;
    expect(first).toMatchObject({ id: 'TV1' });
    expect(first?.lines).toHaveLength(4);
    expect(first?.probability).toBeGreaterThan(0.9);
  });

  it('should move the break to the pin side once the far side reads normal', () => {
    const far: Observation = {
      kind: 'place',
      line: 'TOUCH_INT',
      place: { side: 'far', part: 'R23' },
      verdict: 'normal',
    };
    const open = walked({ 33: 'open' });
    const before = ranked(open);
    const after = ranked([...open, far]);
    expect(probabilityOf(before, 'R23 pad 2')).toBeGreaterThan(0.1);
    expect(probabilityOf(after, 'R23 pad 2')).toBeLessThan(0.01);
    expect(probabilityOf(after, 'J7 pin 33')).toBeGreaterThan(probabilityOf(before, 'J7 pin 33'));
  });

  it('should find three filters torn at once', () => {
    const opens = Object.fromEntries(
      ['2', '3', '5', '6', '8', '9'].map((pin) => [pin, 'open' as const]),
    );
    // A ground reads normal between each pair, so no lead explains them all.
    const ranking = ranked(walked(opens));
    for (const id of ['FL1', 'FL2', 'FL3']) expect(probabilityOf(ranking, id)).toBeGreaterThan(0.5);
  });

  it('should take what tells nothing as nothing', () => {
    const open = walked({ 33: 'open' });
    const idle: Evidence = [
      { kind: 'pin', pin: '35', verdict: 'unsure' },
      { kind: 'press', line: 'TOUCH_INT', part: 'R23', finding: 'inconclusive' },
    ];
    expect(ranked([...open, ...idle])).toEqual(ranked(open));
  });

  it('should be the same whatever was weighed before', () => {
    const open = walked({ 33: 'open' });
    ranked(walked({ 5: 'open', 6: 'open' }));
    expect(ranked(open)).toEqual(rankedOn(model, open));
  });
});

describe('the ranking', () => {
  it('should be in falling order', () => {
    const ranking = ranked(walked({ 5: 'open', 22: 'low', 33: 'wobble' }));
    const order = ranking.suspects.map(({ probability }) => probability);
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(order.length).toBeGreaterThan(39);
  });

  it('should leave out nothing but the less likely where a least is asked for', () => {
    const posterior = weigh(walked({ 5: 'open', 22: 'low', 33: 'wobble' }));
    const likely = rankSuspects(posterior, 0.02);
    expect(likely).toEqual(
      rankSuspects(posterior, 0).filter(({ probability }) => probability >= 0.02),
    );
    expect(likely.length).toBeGreaterThan(2);
  });

  it('should tell two faults on independent lines apart, each with its own weight', () => {
    const board = buildModel(
      smallBoard({
        A: { chain: 'J1_pin_1 R1 U1' },
        G: { kind: 'ground' },
        B: { chain: 'J1_pin_3 R2 U2' },
      }),
    );
    const both = rankedOn(board, [
      { kind: 'pin', pin: '1', verdict: 'open' },
      { kind: 'pin', pin: '2', verdict: 'normal' },
      { kind: 'pin', pin: '3', verdict: 'open' },
      { kind: 'pin', pin: '2', verdict: 'normal' },
    ]);
    const likeliest = ['A', 'B'].map(
      (line) =>
        both.suspects.find(({ where, lines }) => where !== 'lead' && lines.includes(line))?.where,
    );
    expect(likeliest).toEqual(['joint', 'joint']);
    // Without the chance of a lead the two lines are independent, so each is as it is alone.
    const alone = buildModel(smallBoard({ A: { chain: 'pin_1 R1 U1' } }), {
      leads: { 'ground-clip': 0, 'walking-lead': 0 },
    });
    const leadless = buildModel(
      smallBoard({ A: { chain: 'pin_1 R1 U1' }, B: { chain: 'pin_2 R2 U2' } }),
      { leads: { 'ground-clip': 0, 'walking-lead': 0 } },
    );
    const one = rankedOn(alone, [{ kind: 'pin', pin: '1', verdict: 'open' }]);
    const two = rankedOn(leadless, [
      { kind: 'pin', pin: '1', verdict: 'open' },
      { kind: 'pin', pin: '2', verdict: 'open' },
    ]);
    expect(probabilityOf(two, 'pin 1')).toBeCloseTo(probabilityOf(one, 'pin 1'), 12);
    expect(probabilityOf(two, 'pin 2')).toBeCloseTo(probabilityOf(one, 'pin 1'), 12);
  });

  it('should leave what no chain names as other', () => {
    const board = buildModel(smallBoard({ A: { expect: 1000 } }), { priors: { unnamed: 0.2 } });
    const ranking = rankedOn(board, [{ kind: 'pin', pin: '1', verdict: 'low' }]);
    expect(ranking.other).toBeGreaterThan(0.5);
    expect(ranking.suspects.every(({ id }) => id !== '')).toBe(true);
  });
});
