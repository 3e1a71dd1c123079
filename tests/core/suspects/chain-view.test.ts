import { describe, expect, it } from 'vitest';
import { eventBodies } from '../../../src/core/events.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import { chainView } from '../../../src/core/suspects/chain-view.js';
import { suspectsRanked } from '../../../src/core/suspects/suspects-ranked.js';
import { weighFaults } from '../../../src/core/suspects/weigh-faults.js';
import { smallBoard } from './small-board.js';

const board = buildModel(
  smallBoard({
    A: { chain: 'J1_pin_1 [R9=1000] R1_pad R1 R1_end U1' },
    B: { chain: 'J1_pin_2 C1 U1', expect: 'overload' },
    V: { chain: 'F1 U2', pins: 2 },
    G: { kind: 'ground', pins: 2 },
  }),
);

describe('a line drawn as a chain', () => {
  const posterior = weighFaults(board, [
    { kind: 'pin', pin: '1', verdict: 'open' },
    { kind: 'pin', pin: '2', verdict: 'normal' },
  ]);

  it('should carry a probability at each stop, the open pin joint most', () => {
    const { stops, none, lead } = chainView(posterior, 'A');
    expect(stops.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'joint J1 pin 1',
      'branch R9',
      'joint R1 pad',
      'part R1',
      'joint R1 end',
      'chip U1',
    ]);
    const [pin, ...rest] = stops.map(({ probability }) => probability);
    // Behind R9 a break would have read 1 kΩ, not overload.
    expect(pin).toBeGreaterThan(0.5);
    for (const probability of rest) expect(probability).toBeLessThan(0.1);
    expect(none + lead).toBeLessThan(0.5);
  });

  it('should show the joints of a line on several pins apart', () => {
    const seen = weighFaults(board, [
      { kind: 'pin', pin: '3', verdict: 'open' },
      { kind: 'pin', pin: '4', verdict: 'normal' },
    ]);
    const { entries, stops } = chainView(seen, 'V');
    expect(entries.map(({ pin }) => pin)).toEqual(['3', '4']);
    expect(entries[0]?.probability).toBeGreaterThan(0.5);
    expect(entries[1]?.probability).toBeLessThan(0.01);
    expect(Math.max(...stops.map(({ probability }) => probability))).toBeLessThan(0.05);
  });

  it('should find a ground by its pin, and refuse what is not there', () => {
    expect(chainView(posterior, 'G', '6').stops.map(({ id }) => id)).toEqual(['J1 pin 6']);
    expect(() => chainView(posterior, 'Z')).toThrow(/no line Z to draw/);
    expect(() => chainView(posterior, 'A', '2')).toThrow(/no line A to draw/);
  });
});

describe('the event of a ranking', () => {
  it('should fit the catalogue, name what is likely, and propose the next probe', () => {
    const body = suspectsRanked(
      weighFaults(board, [
        { kind: 'pin', pin: '1', verdict: 'open' },
        { kind: 'pin', pin: '1', verdict: 'open' },
        { kind: 'pin', pin: '5', verdict: 'normal' },
      ]),
    );
    expect(eventBodies['suspects-ranked'].parse(body)).toEqual(body);
    expect(body.suspects[0]).toMatchObject({ where: 'joint', id: 'J1 pin 1', lines: ['A'] });
    expect(body.suspects.every(({ probability }) => probability >= 0.02)).toBe(true);
    expect(body.next).not.toBeNull();
    expect(body.next?.line).toBe('A');
  });

  it('should propose nothing where nothing is in question', () => {
    const body = suspectsRanked(weighFaults(board, [{ kind: 'pin', pin: '5', verdict: 'normal' }]));
    expect(eventBodies['suspects-ranked'].parse(body)).toEqual(body);
    expect(body.next).toBeNull();
  });
});
