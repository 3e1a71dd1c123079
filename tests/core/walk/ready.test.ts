// The leads zeroed and a known part read before the walk: on the bench, and step by step.
import { describe, expect, it } from 'vitest';
import { usualError } from '../../../src/bench/meter.js';
import type { EventOf, WalkEvent } from '../../../src/core/events.js';
import type { Act } from '../../../src/core/inputs.js';
import type { Reading } from '../../../src/core/reading.js';
import { beginWalk, decide } from '../../../src/core/walk/decide.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { rejudge } from '../../../src/core/walk/rejudge.js';
import { rerunSession } from '../../../src/core/walk/rerun.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import {
  type LiveWalkOptions,
  misnamed,
  openedWith,
  verdictsOf,
  walkOnBench,
} from '../../bench/support/live-walk.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');
type Opening = NonNullable<LiveWalkOptions['opening']>;

const ofType = <K extends WalkEvent['type']>(events: readonly WalkEvent[], type: K) =>
  events.filter((event): event is EventOf<K> => event.type === type);

const onBench = (opening: Opening, error: Partial<typeof usualError> = {}) =>
  walkOnBench({
    driver,
    profile,
    bench: { scenario: 'healthy', seed: 4 },
    setup: { error: { ...usualError, ...error } },
    opening,
  });

describe('a walk whose leads are zeroed on the bench', () => {
  const leadOhms = 0.6;
  const live = onBench({ ready: ['lead-zero'] }, { leadOhms });

  it('should take off what the leads have, with its uncertainty', () => {
    expect(live.finished).toBe(true);
    expect(misnamed(live)).toEqual([]);
    const [zeroed] = ofType(live.events, 'lead-zeroed');
    expect(Math.abs((zeroed?.ohms ?? 0) - leadOhms)).toBeLessThan(0.1);
    expect(zeroed?.standardUncertainty).toBeGreaterThan(0);
    const grounds = ofType(live.events, 'ground-touched');
    expect(grounds).toHaveLength(2);
    // A sound ground is 0.12 ohm on this bench.
    for (const { value } of grounds) expect(Math.abs(value - 0.12)).toBeLessThan(0.15);
    const core = ofType(live.events, 'pin-settled').find(({ line }) => line === 'CORE_0V9');
    const bare = ofType(onBench({}, { leadOhms }).events, 'pin-settled').find(
      ({ line }) => line === 'CORE_0V9',
    );
    expect((bare?.value ?? 0) - (core?.value ?? 0)).toBeCloseTo(zeroed?.ohms ?? 0, 1);
  });

  it('should give the same from its readings, and judge the same again', () => {
    const [opened, ...stored] = live.events.map(({ seq: _, ...event }) => event as WalkEvent);
    const anew = [...rerunSession(opened as EventOf<'session-opened'>, stored)];
    expect(anew.slice(1)).toEqual(stored);
    expect([...verdictsOf(live.events).values()].every((verdict) => verdict === 'normal')).toBe(
      true,
    );
  });
});

describe('a walk that begins with a reference', () => {
  const reference = { value: 100, tolerance: 0.01 };

  it('should begin with a meter that reads it right', () => {
    const live = onBench({ ready: ['lead-zero', 'reference'], reference });
    expect(live.finished).toBe(true);
    expect(ofType(live.events, 'reference-checked').map(({ outcome }) => outcome.ok)).toEqual([
      true,
    ]);
  });

  it('should refuse a meter that is 6 % off, say why, and not judge with it', () => {
    const live = walkOnBench({
      driver,
      profile,
      bench: { scenario: 'healthy', seed: 4, answers: 'ground-taps' },
      setup: { error: { ...usualError, scale: 1.06 } },
      opening: { ready: ['reference'], reference },
      patienceS: 20,
    });
    const [checked] = ofType(live.events, 'reference-checked');
    expect(checked?.outcome).toMatchObject({ ok: false, because: 'reads-high' });
    // Until the technician leaves the reference out.
    const left = live.events.findIndex(({ type }) => type === 'ready-left');
    expect(live.events.findIndex(({ type }) => type === 'ground-touched')).toBeGreaterThan(left);
    expect(left).toBeGreaterThan(0);
    expect(ofType(live.events, 'pin-judged')).toEqual([]);
  });
});

/** Told reading by reading, ten a second. */
const stepwise = (opening: Opening, measure = profile.measure) => {
  const opened = {
    ...openedWith(driver, profile),
    measure: { function: measure.function, polarity: measure.polarity },
    ...opening,
  };
  let { state, events } = beginWalk(openWalk(opened));
  const all: WalkEvent[] = [...events];
  let t = 0;
  const give = (input: Parameters<typeof decide>[1]): void => {
    ({ state, events } = decide(state, input));
    all.push(...events);
  };
  const reading = (part: { value: number } | { overload: true }): void => {
    t += 0.1;
    const ohms = measure.function === 'resistance';
    const scale = ohms ? { resolution: 0.01, range: 600 } : { resolution: 0.001, range: 2 };
    const base = { t, function: measure.function, ...scale };
    give({ kind: 'reading', reading: { ...base, ...part } as Reading });
  };
  return {
    get state(): WalkState {
      return state;
    },
    all,
    act: (act: Act['act']) => give({ kind: 'act', t, act: { act } }),
    values: (seconds: number, ohms: (n: number) => number) => {
      for (let n = 0; n < seconds * 10; n += 1) reading({ value: ohms(n) });
    },
    air: (seconds: number) => {
      for (let n = 0; n < seconds * 10; n += 1) reading({ overload: true });
    },
  };
};

describe('the steps before a walk', () => {
  it.each([
    ['too much', () => 1.4, 'too-large'],
    ['below nothing', () => -0.4, 'negative'],
    ['what does not hold still', (n: number) => 0.2 + 0.2 * (n % 3), 'unsteady'],
  ] as const)(
    'should refuse leads that are %s, once a contact, and take the next',
    (_, ohms, because) => {
      const told = stepwise({ ready: ['lead-zero'] });
      told.air(0.5);
      told.values(6, ohms);
      expect(ofType(told.all, 'lead-zero-refused').map(({ refused }) => refused.because)).toEqual([
        because,
      ]);
      told.air(0.5);
      told.values(2, () => 0.2);
      expect(told.state.leads?.ohms).toBeCloseTo(0.2, 9);
      expect(told.state.ready).toBeNull();
    },
  );

  it('should not take the zeroed contact for the first ground', () => {
    const told = stepwise({ ready: ['lead-zero'] });
    told.values(5, () => 0.2);
    expect(told.state.leads).not.toBeNull();
    expect(ofType(told.all, 'ground-touched')).toEqual([]);
    told.air(1);
    told.values(2, () => 0.3);
    expect(ofType(told.all, 'ground-touched')).toHaveLength(1);
  });

  it('should be left out by skip, one step at a time, and refuse what belongs to the walk', () => {
    const told = stepwise({
      ready: ['lead-zero', 'reference'],
      reference: { value: 100, tolerance: 0.01 },
    });
    told.act('open');
    expect(told.all.at(-1)).toMatchObject({ type: 'act-refused', act: 'open' });
    told.act('skip');
    expect(told.state.ready?.step).toBe('reference');
    told.act('skip');
    expect(told.state).toMatchObject({ ready: null, leads: null, stage: 'ground-check' });
  });

  it('should come when asked for by an act, only before the walk and where it makes sense', () => {
    const told = stepwise({});
    told.act('reference');
    expect(told.all.at(-1)).toMatchObject({ type: 'act-refused', act: 'reference' });
    told.act('zero');
    expect(told.state.ready?.step).toBe('lead-zero');
    told.values(2, () => 0.2);
    expect(told.state.leads).not.toBeNull();
    told.act('skip');
    told.act('zero');
    expect(told.all.at(-1)).toMatchObject({ type: 'act-refused', act: 'zero' });
    const volts = stepwise({}, { function: 'diode', polarity: 'black-walks' });
    volts.act('zero');
    expect(volts.all.at(-1)).toMatchObject({ type: 'act-refused', act: 'zero' });
  });

  it('should try a junction in diode test', () => {
    const opening: Opening = { ready: ['reference'], reference: { value: 0.6, tolerance: 0.05 } };
    const told = stepwise(opening, { function: 'diode', polarity: 'black-walks' });
    told.values(4, () => 0.7);
    expect(ofType(told.all, 'reference-checked').at(-1)?.outcome).toMatchObject({ ok: false });
    told.air(0.5);
    told.values(2, () => 0.61);
    expect(ofType(told.all, 'reference-checked').at(-1)?.outcome).toMatchObject({ ok: true });
    expect(told.state.ready).toBeNull();
  });

  it('should judge the stored captures again without the leads', () => {
    const live = onBench({ ready: ['lead-zero'] }, { leadOhms: 0.8 });
    const state = live.events
      .slice(1)
      .reduce<WalkState>(evolve, openWalk(live.events[0] as EventOf<'session-opened'>));
    expect(
      rejudge(state, profile).filter(({ judged, before }) => judged.verdict !== before),
    ).toEqual([]);
  });
});
