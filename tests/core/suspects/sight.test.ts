import { describe, expect, it } from 'vitest';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { FaultMode } from '../../../src/core/suspects/fault-modes.js';
import { shownClasses, showsOf } from '../../../src/core/suspects/shows.js';
import {
  isWhole,
  type SeatedFault,
  type Sight,
  sightOf,
} from '../../../src/core/suspects/sight.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { smallBoard } from './small-board.js';

const nobody = (): boolean => false;
const everybody = (): boolean => true;

const fault = (model: SuspectModel, id: string, mode: FaultMode, route = 0): SeatedFault => {
  const seat = model.routes[route]?.seats.find(({ suspect }) => model.suspects[suspect]?.id === id);
  if (seat === undefined) throw new Error(`no seat for ${id}`);
  return { seat, mode };
};

// Stops:                                    0     1          2      3  4      5
const model = buildModel(
  smallBoard({ A: { chain: 'pin_1 [R9=1030] R1_pad R1 R1_end U1' }, B: { chain: 'pin_2 U2' } }),
);
const fromPin = { gap: 0, pin: '1' };

const shows = (sight: Sight): Record<string, number> => {
  const route = model.routes[0];
  if (route === undefined) throw new Error('no route');
  return showsOf(route, sight, 'resistance');
};

describe('what a probe sees', () => {
  it('should be the whole line where nothing is at fault', () => {
    const sight = sightOf(fromPin, [], nobody);
    expect(isWhole(sight)).toBe(true);
    expect(shows(sight)).toMatchObject({ normal: 1 });
  });

  it('should be nothing where the pin joint is broken', () => {
    const sight = sightOf(fromPin, [fault(model, 'pin 1', 'broken')], nobody);
    expect(sight).toMatchObject({ left: -1, right: 0 });
    expect(shows(sight)).toMatchObject({ open: 1 });
  });

  it('should be the branch where the line is broken behind it', () => {
    const sight = sightOf(fromPin, [fault(model, 'R1 end', 'broken')], nobody);
    expect(sight.right).toBe(4);
    // 1030 Ω, give or take 3 %, against 900 to 1100 Ω.
    expect(shows(sight).normal).toBeGreaterThan(0.97);
  });

  it('should be the chip from behind a break, and the branch from before one', () => {
    const broken = [fault(model, 'R1', 'broken')];
    expect(isWhole(sightOf({ gap: 4, pin: null }, broken, nobody))).toBe(true);
    expect(sightOf({ gap: 3, pin: null }, broken, nobody)).toMatchObject({ left: -1, right: 3 });
  });

  it('should be nothing between two breaks', () => {
    const broken = [fault(model, 'R1 pad', 'broken'), fault(model, 'U1', 'broken')];
    const sight = sightOf({ gap: 3, pin: null }, broken, nobody);
    expect(sight).toMatchObject({ left: 2, right: 5 });
    expect(shows(sight)).toMatchObject({ open: 1 });
  });

  it.each<[FaultMode, boolean, boolean]>([
    ['broken', false, false],
    ['loose', false, true],
    ['cracked', true, false],
  ])('should hold through a %s joint: %s at rest, %s under pressure', (mode, rest, pressed) => {
    const faults = [fault(model, 'R1 pad', mode)];
    expect(isWhole(sightOf(fromPin, faults, nobody))).toBe(rest);
    expect(isWhole(sightOf(fromPin, faults, everybody))).toBe(pressed);
  });

  it('should be a short under pressure where a joint is bridged, and at rest where one is shorted', () => {
    const bridged = [fault(model, 'R1 pad', 'bridged')];
    expect(sightOf(fromPin, bridged, nobody).load).toBe('none');
    expect(sightOf(fromPin, bridged, everybody).load).toBe('short');
    expect(sightOf(fromPin, [fault(model, 'R9', 'shorted')], nobody).load).toBe('short');
  });

  it('should read high through a poor joint, and not from behind it', () => {
    const raised = [fault(model, 'R1 pad', 'raised')];
    expect(shows(sightOf(fromPin, raised, nobody))).toMatchObject({ high: 1 });
    expect(shows(sightOf({ gap: 3, pin: null }, raised, nobody))).toMatchObject({ normal: 1 });
  });

  it('should read low from both sides of a leak', () => {
    const leaky = [fault(model, 'R1', 'leaky')];
    expect(shows(sightOf(fromPin, leaky, nobody))).toMatchObject({ low: 1 });
    expect(shows(sightOf({ gap: 5, pin: null }, leaky, nobody))).toMatchObject({ low: 1 });
  });

  it('should not see what lies behind a break', () => {
    const faults = [fault(model, 'R1', 'broken'), fault(model, 'U1', 'shorted')];
    expect(sightOf(fromPin, faults, nobody).load).toBe('none');
    expect(sightOf({ gap: 4, pin: null }, faults, nobody).load).toBe('short');
  });

  it('should not be stopped by the joint of another pin of the line', () => {
    const twoPins = buildModel(smallBoard({ A: { chain: 'both R1', pins: 2 } }));
    const broken = [fault(twoPins, 'J1 pin 1', 'broken')];
    expect(isWhole(sightOf({ gap: 0, pin: '2' }, broken, nobody))).toBe(true);
    expect(isWhole(sightOf({ gap: 0, pin: '1' }, broken, nobody))).toBe(false);
    const shorted = [fault(twoPins, 'J1 pin 1', 'shorted')];
    expect(sightOf({ gap: 0, pin: '2' }, shorted, nobody).load).toBe('short');
  });

  it('should tell a joint that may not hold still', () => {
    expect(sightOf(fromPin, [fault(model, 'R1 pad', 'cracked')], nobody).intermittent).toBe(true);
    expect(sightOf(fromPin, [fault(model, 'R1 pad', 'broken')], nobody).intermittent).toBe(false);
  });
});

describe('what a meter shows', () => {
  const broken = { left: -1, right: 2, load: 'none', intermittent: false } as const;
  const shownBy = (chain: string, expectation: number | 'overload' = 1000, diode = false) => {
    const route = buildModel(smallBoard({ A: { chain, expect: expectation } })).routes[0];
    if (route === undefined) throw new Error('no route');
    return showsOf(route, broken, diode ? 'diode' : 'resistance');
  };

  it.each([
    ['a capacitor', 'pin_1 [C1] R1 U1', false],
    ['a protection part in ohms', 'pin_1 [TV1] R1 U1', false],
    ['a resistor of unknown value in the diode test', 'pin_1 [R9] R1 U1', true],
    ['two branches', 'pin_1 [R9=2000] R1 U1', false],
  ])('should be some distribution for %s', (_, chain, diode) => {
    const shown = shownBy(chain, 1000, diode);
    expect(shownClasses.reduce((sum, name) => sum + shown[name], 0)).toBeCloseTo(1, 12);
  });

  it('should see through a capacitor, and be misled by a protection part in the diode test', () => {
    expect(shownBy('pin_1 [C1] R1 U1').open).toBeGreaterThan(0.9);
    expect(shownBy('pin_1 [TV1] R1 U1', 1000, true).normal).toBeGreaterThan(0.3);
  });

  it('should put branches side by side', () => {
    // 2000 Ω beside 2000 Ω read 1000 Ω; one of them alone reads too high.
    const route = buildModel(smallBoard({ A: { chain: 'pin_1 [R8=2000] [R9=2000] R1 U1' } }))
      .routes[0];
    if (route === undefined) throw new Error('no route');
    expect(showsOf(route, { ...broken, right: 3 }, 'resistance').normal).toBeGreaterThan(0.99);
    expect(showsOf(route, { ...broken, right: 2 }, 'resistance').high).toBeGreaterThan(0.99);
  });

  it('should call overload normal where that is what a good board shows', () => {
    expect(shownBy('pin_1 C1 U1', 'overload').normal).toBe(1);
    expect(shownBy('pin_1 [R9=1000] C1 U1', 'overload').low).toBe(1);
  });
});
