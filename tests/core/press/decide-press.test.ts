import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CueWindow } from '../../../src/core/press/cue-window.js';
import { decidePress } from '../../../src/core/press/decide-press.js';
import type { PressCycle } from '../../../src/core/press/press-cycle.js';
import type { Side } from '../../../src/core/press/sides.js';

const lagBandS = 0.5;

const windowOf = (cue: 'press' | 'release', side: Side | null, locked: boolean, answerS = 0.4) =>
  ({
    cue,
    fromS: 0,
    toS: 2,
    side,
    overload: side === 'above',
    value: side === 'normal' ? 388 : null,
    answerS,
    locked,
  }) satisfies CueWindow;

/** Two letters a cycle: n normal, a overload, b short, ? unclear; capitals for a change in its zone. */
const cyclesOf = (picture: string): PressCycle[] => {
  const side: Record<string, Side> = { n: 'normal', a: 'above', b: 'below' };
  const read = (cue: 'press' | 'release', letter: string): CueWindow =>
    windowOf(cue, side[letter.toLowerCase()] ?? null, letter !== letter.toLowerCase());
  return picture.split(' ').map((pair) => ({
    press: read('press', pair[0] ?? '?'),
    release: read('release', pair[1] ?? '?'),
    releaseSeen: true,
  }));
};

const decide = (picture: string) => decidePress(cyclesOf(picture), lagBandS);

describe('decidePress', () => {
  it.each([
    ['NA NA NA NA', 'loose'],
    ['AN AN AN AN', 'cracked'],
    ['BN BN BN BN', 'bridged'],
    ['NB NB NB NB', 'bridged'],
    ['aa aa aa aa', 'steady-open'],
    ['nn nn nn nn', 'steady'],
    ['bb bb bb bb', 'steady'],
    ['NA aa NA NA NA', 'loose'],
    ['NA ?A NA NA NA', 'loose'],
    ['NA aa NA NA aa NA NA', 'loose'],
    ['aa na aa aa aa', 'steady-open'],
    ['nn nn n? nn nn', 'steady'],
    ['na na na na na', 'inconclusive'],
    ['Na Na Na Na', 'inconclusive'],
    ['nA nA nA nA nA', 'inconclusive'],
  ])('%s is %s, and stops', (picture, finding) => {
    expect(decide(picture)).toMatchObject({ finding, stops: true });
  });

  it.each([
    'NA NA NA',
    'NA BA NA BA',
    'NA NA NA aa',
    'NA NA NA N?',
    'NA NA NA nA',
    'aa na aa aa',
    'NA NA NA NN',
  ])('%s goes on', (picture) => {
    expect(decide(picture)).toMatchObject({ finding: 'inconclusive', stops: false });
  });

  it.each(['?? ?? ?? ??', 'na an na an', 'aa NA aa aa aa aa NA'])(
    '%s is given up before the eighth cycle',
    (picture) => {
      expect(decide(picture)).toMatchObject({ finding: 'inconclusive', stops: true });
    },
  );

  it('counts unclear windows against the finding', () => {
    expect(decide('NA NA NA NA').pValue).toBeCloseTo(1 / 70, 12);
    // An unclear press counts as no contact, an unclear release as contact: 3 of 4 against 0 of 4, and the same.
    expect(decide('NA NA NA ?A').pValue).toBeCloseTo(1 / 14, 12);
    expect(decide('NA NA NA N?').pValue).toBeCloseTo(1 / 14, 12);
  });

  it('counts only answers that lie within one band of lags', () => {
    const lags = [0.2, 0.4, 0.6, 1.4];
    const cycles = cyclesOf('NA NA NA NA').map((cycle, i) => ({
      ...cycle,
      press: { ...cycle.press, answerS: lags[i] as number },
    }));
    expect(decidePress(cycles, lagBandS)).toMatchObject({ finding: 'inconclusive', answered: 3 });
    expect(decidePress(cycles, 1.2)).toMatchObject({ finding: 'loose', answered: 4 });
  });

  it('refuses a ninth cycle', () => {
    expect(() => decide('NA NA NA NA NA NA NA NA NA')).toThrow(RangeError);
  });

  it('never goes on after eight cycles, and gives up only where nothing could come', () => {
    const letter = fc.constantFrom('n', 'a', '?', 'N', 'A');
    const picture = fc
      .array(
        fc.tuple(letter, letter).map((pair) => pair.join('')),
        { minLength: 4, maxLength: 8 },
      )
      .map((pairs) => pairs.join(' '));
    fc.assert(
      fc.property(picture, (given) => {
        const decision = decide(given);
        const cycles = given.split(' ').length;
        if (cycles === 8) expect(decision.stops).toBe(true);
        if (!decision.stops || decision.finding !== 'inconclusive') return;
        for (const next of ['NA', 'AN']) {
          for (let more = 1; cycles + more <= 8; more += 1) {
            const goneOn = decide(`${given}${` ${next}`.repeat(more)}`);
            expect(['loose', 'cracked']).not.toContain(goneOn.finding);
          }
        }
      }),
      { seed: 8, numRuns: 1000 },
    );
  });
});
