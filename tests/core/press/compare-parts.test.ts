import { describe, expect, it } from 'vitest';
import type { PressedPlace } from '../../../src/core/press/compare-parts.js';
import { compareParts } from '../../../src/core/press/compare-parts.js';
import { judgeRecord } from '../../../src/core/press/judge-record.js';
import { type PressScript, scriptedPress, setup } from './scripted-press.js';

const pressed = (place: string, changes: Partial<PressScript>): PressedPlace => ({
  place,
  sham: place === 'bare board',
  result: judgeRecord({ ...setup, part: place }, scriptedPress(changes)),
});

const silent: Partial<PressScript> = { pressed: 'overload' };

describe('compareParts', () => {
  it('names the part that alone answers', () => {
    const compared = compareParts([
      pressed('U3', silent),
      pressed('FL2', {}),
      pressed('bare board', silent),
    ]);
    expect(compared).toMatchObject({ outcome: 'one', parts: ['FL2'], shamPressed: true });
    expect(compared.ranking.map(({ place }) => place)[0]).toBe('FL2');
  });

  it('names the part that answers most where its neighbour answers as well', () => {
    const compared = compareParts([
      pressed('R7', { cycles: 5, missed: [1] }),
      pressed('FL2', {}),
      pressed('bare board', silent),
    ]);
    expect(compared).toMatchObject({ outcome: 'one', parts: ['FL2'] });
    expect(compared.ranking.map(({ place }) => place)).toEqual(['FL2', 'R7', 'bare board']);
  });

  it('asks for another press of parts that answer alike', () => {
    const compared = compareParts([pressed('R7', {}), pressed('FL2', {}), pressed('U3', silent)]);
    expect(compared).toMatchObject({ outcome: 'tied', shamPressed: false });
    expect([...compared.parts].sort()).toEqual(['FL2', 'R7']);
  });

  it('says that the board flexes or the pin joint moves where all answer, or bare board does', () => {
    const flexes = { outcome: 'all', parts: [] };
    expect(compareParts([pressed('R7', {}), pressed('FL2', {})])).toMatchObject(flexes);
    expect(
      compareParts([pressed('FL2', {}), pressed('U3', silent), pressed('bare board', {})]),
    ).toMatchObject(flexes);
  });

  it('names none where none answers', () => {
    expect(compareParts([pressed('FL2', silent)])).toMatchObject({ outcome: 'none', parts: [] });
  });

  it('adjusts over the places (Holm 1979): the smallest of three is tripled', () => {
    const { ranking } = compareParts([
      pressed('FL2', {}),
      pressed('U3', silent),
      pressed('bare board', silent),
    ]);
    expect(ranking[0]?.familyPValue).toBeCloseTo(3 * (ranking[0]?.result.adjustedPValue ?? 0), 12);
    expect(ranking[1]?.familyPValue).toBe(1);
  });

  it('refuses an empty comparison', () => {
    expect(() => compareParts([])).toThrow(RangeError);
  });
});
