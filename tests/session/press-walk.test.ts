// Press tests in a whole walk on the virtual bench, on stepped time: nobody presses a key, the technician goes
// by what the program says, and each fault is found at the part that has it.
import { describe, expect, it } from 'vitest';
import type { EventOf, WalkEvent } from '../../src/core/events.js';
import { evolve } from '../../src/core/walk/evolve.js';
import { inputOf } from '../../src/core/walk/input-of.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { rerunSession } from '../../src/core/walk/rerun.js';
import { misnamed, walkOnBench } from '../bench/support/live-walk.js';
import { shippedProfile } from '../bench/support/profile-files.js';
import { shippedDriver } from '../support/driver-files.js';

const profile = shippedProfile('demo');

const pressWalk = (scenario: 'loose-filter' | 'demo', seed = 3) =>
  walkOnBench({
    driver: shippedDriver('stream-fields-flags'),
    profile,
    bench: { scenario, pace: 'steady', seed },
    pressEach: true,
    patienceS: 1500,
  });

const ofType = <K extends WalkEvent['type']>(events: readonly WalkEvent[], type: K) =>
  events.filter((event): event is EventOf<K> => event.type === type);

describe('press tests in a walk', () => {
  it('should find the loose filter on both of its lines, and that bare board does nothing', () => {
    const walk = pressWalk('loose-filter');
    expect(walk.finished).toBe(true);
    expect(misnamed(walk)).toEqual([]);
    const judged = ofType(walk.events, 'press-judged');
    const found = judged.map(({ line, part, finding }) => `${line} ${part} ${finding}`);
    expect(found).toEqual([
      'LANE1_P FL2 loose',
      'LANE1_P bare-board steady-open',
      'LANE1_N FL2 loose',
      'LANE1_N bare-board steady-open',
    ]);
    // Fisher (1935), ch. 2: four pairs told apart without a miss, 1/70.
    for (const { finding, cycles, pValue } of judged) {
      if (finding === 'loose' && cycles === 4) expect(pValue).toBeCloseTo(1 / 70, 10);
    }
    const compared = ofType(walk.events, 'press-compared');
    expect(compared.map(({ outcome, parts }) => [outcome, ...parts])).toEqual([
      ['one', 'FL2'],
      ['one', 'FL2'],
    ]);
  });

  // With seed 2 the leaky line is told from pin 34, with seed 3 from its own pin.
  it.each([2, 3])('should press-test a leaky line, whenever its verdict comes, seed %i', (seed) => {
    const walk = pressWalk('demo', seed);
    expect(walk.finished).toBe(true);
    expect(misnamed(walk)).toEqual([]);
    const found = ofType(walk.events, 'press-judged').map(
      ({ line, part, finding }) => `${line} ${part} ${finding}`,
    );
    expect(found).toEqual([
      'LANE1_P FL2 loose',
      'LANE1_P bare-board steady-open',
      'TOUCH_INT R23 steady',
    ]);
    for (const { t, pin } of ofType(walk.events, 'press-ended')) {
      expect(walk.link.pinAt(t)).toBe(pin);
    }
  });

  it('should be the same decided anew from its inputs, and folded from its events', () => {
    const { events } = pressWalk('loose-filter');
    const [opened, ...stored] = events.map(({ seq: _seq, ...event }) => event as WalkEvent);
    if (opened?.type !== 'session-opened') throw new Error('the walk has no beginning');
    expect(stored.flatMap((event) => inputOf(event) ?? []).length).toBeGreaterThan(1000);
    expect([...rerunSession(opened, stored)]).toEqual([opened, ...stored]);
    const folded = stored.reduce(evolve, openWalk(opened));
    expect(folded.press).toBeNull();
    expect(folded.pressTests).toBe(4);
  });
});
