// The bench's reply pads: what they read, a technician who answers with them, and leaky lines that look like them.
import { describe, expect, it } from 'vitest';
import { parseBenchName } from '../../src/bench/bench-name.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import { createBoard } from '../../src/bench/board.js';
import { benchPads, learnedFrom } from '../../src/bench/pads.js';
import { learnPads } from '../../src/core/pads/learn-pads.js';
import { padCommands } from '../../src/core/pads/pad.js';
import { planWalk } from '../../src/core/profile/plan.js';
import { rerunSession } from '../../src/core/walk/rerun.js';
import { leakyWalk } from '../benchmarks/pads/leaky-walks.js';
import { shippedDriver } from '../support/driver-files.js';
import { misnamed, verdictsOf, walkOnBench } from './support/live-walk.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');
const resistance = { function: 'resistance', polarity: 'red-walks' } as const;

describe('pads beside the board', () => {
  it('should fit the profile as they are learned, a command each', () => {
    const setup = benchSetup({
      bench: parseBenchName('demo?answers=pads'),
      driver,
      profile,
      hears: true,
    });
    const { pads, problems } = learnPads(learnedFrom(setup.pads, setup), planWalk(profile));
    expect(problems).toEqual([]);
    expect(pads.map(({ command }) => command)).toEqual(padCommands);
  });

  it('should be places after the last pin that read as resistors do', () => {
    const pads = benchPads(profile, driver, resistance, 5);
    const board = createBoard({ profile, faults: [], seed: 5, pads });
    const place = profile.connector.pins.length + 2;
    const ohms = pads[2]?.ohms ?? 0;
    board.advanceTo(1, { pinIndex: place, pressed: null });
    const at = { pinIndex: place, pressed: null };
    expect(board.reads(at, 'resistance')).toBe(ohms);
    expect(board.reads(at, 'diode')).toBeCloseTo(ohms / 1000, 9);
    expect(board.reads(at, 'dc-volts')).toBe(0);
  });

  it('should differ by the seed, within a part in a hundred', () => {
    const [one, two] = [1, 2].map((seed) => benchPads(profile, driver, resistance, seed));
    expect(one).not.toEqual(two);
    one?.forEach(({ ohms }, i) => {
      expect(Math.abs(ohms / (two?.[i]?.ohms ?? 1) - 1)).toBeLessThan(0.013);
    });
  });

  it('should say why a meter that reads volts takes none', () => {
    expect(() =>
      benchPads(profile, driver, { function: 'dc-volts', polarity: 'red-walks' }, 1),
    ).toThrow(/a resistor shows nothing in volts/);
  });
});

describe('a technician who answers with pads', { timeout: 120_000 }, () => {
  it.each([5, 20])(
    'should walk to the end without a key or a wrong name, at %s readings/s',
    (rate) => {
      const walk = walkOnBench({
        driver,
        profile,
        bench: { scenario: 'loose-filter', seed: 3, rate, answers: 'pads', pace: 'steady' },
        pads: true,
      });
      expect(walk.finished).toBe(true);
      expect(misnamed(walk)).toEqual([]);
      expect(verdictsOf(walk.events).get('5')).toBe('open');
      expect(verdictsOf(walk.events).get('6')).toBe('open');
      const acts = walk.events.filter((event) => event.type === 'act-taken');
      expect(acts.length).toBeGreaterThan(2);
      expect(acts.every(({ act, by }) => act === 'open' && by === 'pad')).toBe(true);
      expect(walk.inputs.some(({ kind }) => kind === 'act')).toBe(false);
    },
  );

  it('should have a line in doubt press-tested though it reads well', () => {
    const walk = walkOnBench({
      driver,
      profile,
      bench: { scenario: 'cracked', seed: 2, answers: 'pads', pace: 'steady' },
      setup: { doubts: ['PANEL_RESET'] },
      pads: true,
    });
    expect(walk.finished).toBe(true);
    expect(walk.events.filter(({ type }) => type === 'press-begun')).toMatchObject([
      { line: 'PANEL_RESET' },
    ]);
    expect(walk.events.filter(({ type }) => type === 'press-judged').length).toBeGreaterThan(0);
  });

  it('should go the same way when the session is decided anew from its readings', () => {
    const { events } = walkOnBench({
      driver,
      profile,
      bench: { scenario: 'demo', seed: 4, answers: 'pads', rate: 10 },
      pads: true,
    });
    const [opened] = events;
    if (opened?.type !== 'session-opened') throw new Error('the walk was not opened');
    const again = [...rerunSession(opened, events)].map((event, seq) => ({ ...event, seq }));
    expect(again.filter(({ type }) => type.startsWith('reply-')).length).toBeGreaterThan(3);
    expect(again).toEqual(events);
  });
});

describe('leaky lines and a hand that fumbles', { timeout: 120_000 }, () => {
  it.each([5, 10])('should give no command, at %s readings/s', (rate) => {
    let echoes = 0;
    let judged = 0;
    for (let at = 0; at < 6; at += 1) {
      const asked = { answers: 'ground-taps', leaks: 'random', listens: true } as const;
      const { events } = leakyWalk(profile, driver, { ...asked, rate, seed: 'test' }, at);
      judged += events.filter(({ type }) => type === 'pin-judged').length;
      expect(events.filter(({ type }) => type === 'reply-given')).toEqual([]);
      echoes += events.filter(({ type }) => type === 'reply-asked').length;
    }
    expect(judged).toBeGreaterThan(60);
    expect(echoes).toBeLessThan(2);
  });

  it('should be named as they are where nobody listens to pads', () => {
    const asked = { answers: 'ground-taps', leaks: 'random', rate: 10, seed: 'test' } as const;
    for (let at = 0; at < 3; at += 1) {
      const [with_, without] = [true, false].map((listens) =>
        leakyWalk(profile, driver, { ...asked, listens }, at).events.filter(
          ({ type }) => type === 'pin-settled',
        ),
      );
      expect(with_).toEqual(without);
    }
  });
});
