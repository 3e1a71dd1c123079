// A session that is one press test: paced and at will, on the virtual bench in stepped time. Nobody looks: the
// technician goes by what is said.
import { describe, expect, it } from 'vitest';
import { cueFor } from '../../src/core/cues/cue-for.js';
import type { EventOf, WalkEvent } from '../../src/core/events.js';
import { evolve } from '../../src/core/walk/evolve.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { rerunSession } from '../../src/core/walk/rerun.js';
import type { WalkState } from '../../src/core/walk/state.js';
import { english } from '../../src/core/words/english.js';
import { walkOnBench } from '../bench/support/live-walk.js';
import { shippedProfile } from '../bench/support/profile-files.js';
import { shippedDriver } from '../support/driver-files.js';

interface Asked {
  readonly parts?: readonly string[];
  readonly free?: boolean;
  readonly scenario?: 'loose-filter' | 'healthy';
}

const alone = ({ parts = ['FL2'], free = false, scenario = 'loose-filter' }: Asked) =>
  walkOnBench({
    driver: shippedDriver('stream-fields-flags'),
    profile: shippedProfile('demo'),
    bench: { scenario, pace: 'steady', seed: 3 },
    pressAlone: { pin: '5', line: 'LANE1_P', parts: [...parts], free },
  });

const ofType = <K extends WalkEvent['type']>(events: readonly WalkEvent[], type: K) =>
  events.filter((event): event is EventOf<K> => event.type === type);

const findings = (events: readonly WalkEvent[]): string[] =>
  ofType(events, 'press-judged').map(({ part, finding }) => `${part} ${finding}`);

const foldedAnew = (events: readonly WalkEvent[]): void => {
  const [opened, ...stored] = events.map((event) => {
    const { seq: _seq, ...rest } = event as WalkEvent & { seq: number };
    return rest as WalkEvent;
  });
  if (opened?.type !== 'session-opened') throw new Error('the session has no beginning');
  expect([...rerunSession(opened, stored)]).toEqual([opened, ...stored]);
};

describe('a press test alone', () => {
  it('should find the loose part, press bare board, and be over', () => {
    const { events, finished, link } = alone({});
    expect(finished).toBe(true);
    expect(findings(events)).toEqual(['FL2 loose', 'bare-board steady-open']);
    expect(ofType(events, 'press-compared')).toMatchObject([{ outcome: 'one', parts: ['FL2'] }]);
    expect(ofType(events, 'pin-settled')).toEqual([]);
    const [ended] = ofType(events, 'press-ended');
    expect(link.pinAt(ended?.t ?? 0)).toBe('5');
    foldedAnew(events);
  });

  it('should press every place asked for, and find nothing at the wrong one', () => {
    const { events } = alone({ parts: ['R99', 'FL2'] });
    expect(findings(events)).toEqual(['R99 steady-open', 'FL2 loose', 'bare-board steady-open']);
  });

  it('should do without any part', () => {
    const { events, finished } = alone({ parts: [], scenario: 'healthy' });
    expect(finished).toBe(true);
    expect(findings(events)).toEqual(['null steady']);
  });

  it('should be heard from beginning to end', () => {
    const { events } = alone({});
    const opened = events[0] as EventOf<'session-opened'>;
    const said: string[] = [];
    let state: WalkState = openWalk(opened);
    for (const event of events.slice(1)) {
      state = evolve(state, event);
      const cue = cueFor(event, state, english);
      if (cue !== null) said.push(cue.speech);
    }
    const four = Array.from({ length: 4 }, () => ['press', 'release']).flat();
    expect(said).toEqual([
      'press test; hold the probe on five',
      'next: press F-L-two',
      ...four,
      'it reads again: loose joint',
      'next: bare board, beside the part',
      ...four,
      'stays open',
      'F-L-two answers most',
      'press test done',
    ]);
  });

  it('should say all along whether the line reads while it is pressed at will, and sum it up', () => {
    const { events, finished } = alone({ free: true });
    expect(finished).toBe(true);
    expect(ofType(events, 'cue-given')).toEqual([]);
    const turns = events.flatMap(({ type }) =>
      type === 'reading-returned' || type === 'reading-lost' ? [type] : [],
    );
    const once = ['reading-returned', 'reading-lost'];
    expect(turns).toEqual(['reading-lost', ...once, ...once, ...once, ...once, ...once]);
    const [traced] = ofType(events, 'press-traced');
    expect(traced).toMatchObject({ line: 'LANE1_P', part: 'FL2', rests: 'none', repeats: true });
    expect(traced?.excursions).toHaveLength(5);
    expect(traced?.marked).toMatchObject({ presses: 5, awayPressed: 5, awayBetween: 0 });
    expect(findings(events)).toEqual(['FL2 loose']);
    foldedAnew(events);
  });
});
