// From a walk on the demo board over rework to the recheck, on stepped time: whatever the board is like afterwards,
// the recheck says so, and no pin of the shorter walk is misnamed.
import { describe, expect, it } from 'vitest';
import type { ScenarioName } from '../../src/bench/scenarios.js';
import type { EventOf, WalkEvent } from '../../src/core/events.js';
import { type RecheckHeader, recheckHeader } from '../../src/core/recheck/recheck-header.js';
import { evolveRework, noRework } from '../../src/core/rework/rework-state.js';
import { evolve } from '../../src/core/walk/evolve.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { rerunSession } from '../../src/core/walk/rerun.js';
import { misnamed, walkOnBench } from '../bench/support/live-walk.js';
import { shippedProfile } from '../bench/support/profile-files.js';
import { shippedDriver } from '../support/driver-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');
const ofType = <K extends WalkEvent['type']>(events: readonly WalkEvent[], type: K) =>
  events.filter((event): event is EventOf<K> => event.type === type);

const before = walkOnBench({
  driver,
  profile,
  bench: { scenario: 'demo', pace: 'steady' },
  pressEach: true,
  patienceS: 1500,
});
const reflow: WalkEvent = {
  type: 'rework-logged',
  t: 900,
  action: 'reflow',
  part: 'FL2',
  tool: 'hot-air',
  setPoint: 330,
  seconds: 22,
};
const headerOf = (): RecheckHeader => {
  const [opened, ...rest] = before.events;
  if (opened?.type !== 'session-opened') throw new Error('the walk has no beginning');
  const state = rest.reduce(evolve, openWalk(opened));
  const of = { file: 'demo.jsonl', begins: 'a'.repeat(64), fingerprint: 'b'.repeat(64) };
  const header = recheckHeader(state, [reflow].reduce(evolveRework, noRework), of);
  if (header === null) throw new Error('there is nothing to walk again');
  return header;
};
const header = headerOf();
const recheckOn = (scenario: ScenarioName) =>
  walkOnBench({
    driver,
    profile,
    bench: { scenario, pace: 'steady' },
    recheck: header,
    patienceS: 1500,
  });
const because = (pin: string) => header.pins.find((known) => known.pin === pin)?.because;

describe('which pins are walked again', () => {
  it('should be bad lines, mates, lines through the part, lines near heat, supplies, controls and anchors', () => {
    expect(because('5')).toEqual(['bad', 'part', 'heat']);
    expect(because('6')).toEqual(['mate', 'part', 'heat']);
    expect(because('2')).toEqual(['heat']);
    expect(because('28')).toEqual(['supply']);
    expect(because('33')).toEqual(['bad']);
    expect(because('1')).toEqual(['anchor']);
    const controls = header.pins.filter((pin) => pin.because.includes('control'));
    expect(controls).toHaveLength(3);
    for (const { before: read } of controls) expect(read.verdict).toBe('normal');
  });

  it('should keep the order of the profile, and leave out what nothing asks for', () => {
    const order = profile.connector.pins.map(({ pin }) => pin);
    const walked = header.pins.map(({ pin }) => order.indexOf(pin));
    expect(walked).toEqual([...walked].sort((a, b) => a - b));
    expect(walked.length).toBeLessThan(order.length);
  });

  it('should press again what was loose', () => {
    expect(header.press).toEqual([{ line: 'LANE1_P', part: 'FL2' }]);
  });
});

describe('a recheck', () => {
  it('should be good where the faults are cured and the loose joint stays put', () => {
    const walk = recheckOn('demo-reworked');
    expect(walk.finished).toBe(true);
    expect(misnamed(walk)).toEqual([]);
    const [compared, ...more] = ofType(walk.events, 'recheck-compared');
    expect(more).toEqual([]);
    expect(compared).toMatchObject({ outcome: 'good', controls: 'as-before' });
    expect(compared?.press).toEqual([{ line: 'LANE1_P', part: 'FL2', outcome: 'stays' }]);
    const of = (pin: string) => compared?.pins.find((known) => known.pin === pin)?.difference;
    expect([of('5'), of('33'), of('6'), of('2')]).toEqual([
      'changed',
      'changed',
      'unchanged',
      'unchanged',
    ]);
  });

  it('should name what is newly bad', () => {
    const walk = recheckOn('demo-overheated');
    expect(misnamed(walk)).toEqual([]);
    const compared = ofType(walk.events, 'recheck-compared').at(-1);
    expect(compared?.outcome).toBe('bad');
    const newly = compared?.pins.filter(({ difference }) => difference === 'newly-bad');
    expect(newly?.map(({ line }) => line)).toEqual(['LANE1_N']);
  });

  it('should say to wait at the first untouched line that has moved, and again at the end', () => {
    const walk = recheckOn('demo-warm');
    const moved = ofType(walk.events, 'control-compared').filter(
      ({ outcome }) => outcome === 'moved',
    );
    expect(moved.length).toBeGreaterThan(0);
    // It is held until a second touch agrees.
    for (const { pin } of moved) {
      const judged = ofType(walk.events, 'pin-judged').filter((event) => event.pin === pin);
      expect(judged.map(({ agreed }) => agreed).slice(0, 2)).toEqual([false, true]);
    }
    expect(ofType(walk.events, 'recheck-compared').at(-1)?.outcome).toBe('wait');
  });

  it('should be bad where nothing was cured', () => {
    const compared = ofType(recheckOn('demo').events, 'recheck-compared').at(-1);
    expect(compared?.outcome).toBe('bad');
    expect(compared?.press).toEqual([{ line: 'LANE1_P', part: 'FL2', outcome: 'moves' }]);
  });

  it('should be the same decided anew from its inputs', () => {
    const { events } = recheckOn('demo-reworked');
    const [opened, ...stored] = events.map(({ seq: _seq, ...event }) => event as WalkEvent);
    if (opened?.type !== 'session-opened') throw new Error('the walk has no beginning');
    expect([...rerunSession(opened, stored)]).toEqual([opened, ...stored]);
  });
});
