// A played session tells its followers what a live one told them, at the pace asked for, from wherever.
import { describe, expect, it } from 'vitest';
import type { Numbered } from '../../src/core/events.js';
import type { Control } from '../../src/core/replay/control.js';
import type { WalkState } from '../../src/core/walk/state.js';
import {
  type ReplayParts,
  type ReplaySession,
  replaySession,
} from '../../src/session/replay-session.js';
import { createSteppedClock, type SteppedClock } from '../bench/support/stepped-clock.js';
import { liveSession, withoutNumbers } from '../core/replay/live-session.js';
import { type Recorded, recorded } from '../core/replay/recorded-walk.js';

const live = liveSession({ bench: { seed: 3 }, acts: [[12, { act: 'note', text: 'begun' }]] });
const walk: Recorded = recorded(live.events);
const { recording, events, states } = walk;

interface Heard {
  readonly event: Numbered;
  readonly state: WalkState;
  readonly atS: number;
}

interface Played {
  readonly clock: SteppedClock;
  readonly session: ReplaySession;
  readonly heard: Heard[];
}

const playing = (parts: Partial<ReplayParts> = {}): Played => {
  const clock = createSteppedClock(1000);
  const session = replaySession({ recording, clock, speed: 1, closeAtEnd: false, ...parts });
  const heard: Heard[] = [];
  session.follow((event) => heard.push({ event, state: session.state, atS: clock.now() - 1000 }));
  return { clock, session, heard };
};

const lengthS = recording.endT - recording.startT;

describe('a replay from start to end', () => {
  it('should be of a walk that was finished', () => {
    expect(live.finished).toBe(true);
    expect(events.length).toBeGreaterThan(1000);
  });

  it('should tell every event once, in order, with the state after it, and end as the live one did', async () => {
    const { clock, session, heard } = playing({ closeAtEnd: true });
    session.start();
    clock.run(1000 + lengthS + 1);
    expect(heard.map(({ event }) => event)).toEqual(events);
    heard.forEach(({ state }, at) => {
      if (state !== states[at + 1] && at % 50 === 0) expect(state).toEqual(states[at + 1]);
    });
    expect(withoutNumbers(session.state)).toEqual(withoutNumbers(live.state));
    await expect(session.ended).resolves.toEqual({ how: 'closed' });
  });

  it.each([1, 5, 50])('should take its time at %i times the speed', (speed) => {
    const { clock, session, heard } = playing({ speed });
    session.start();
    clock.run(1000 + lengthS / speed + 1);
    expect(heard).toHaveLength(events.length);
    for (const { event, atS } of heard) {
      expect(atS).toBeCloseTo((event.t - recording.startT) / speed, 6);
    }
  });

  it('should tell all at once and end when asked for max', async () => {
    const { clock, session, heard } = playing({ speed: 'max' });
    session.start();
    expect(heard.map(({ event }) => event)).toEqual(events);
    expect(clock.now()).toBe(1000);
    expect(withoutNumbers(session.state)).toEqual(withoutNumbers(live.state));
    await expect(session.ended).resolves.toEqual({ how: 'closed' });
  });

  it('should stay at its end where somebody sits at a keyboard, and can go back from there', () => {
    const { clock, session, heard } = playing({ speed: 50 });
    session.start();
    clock.run(1000 + lengthS);
    expect(session.replay.view.ended).toBe(true);
    session.replay.apply({ control: 'to-start' });
    expect(session.replay.view).toMatchObject({ at: 2, ended: false, paused: false });
    heard.length = 0;
    clock.run(1000 + 2 * lengthS);
    expect(heard.at(-1)?.event).toEqual(events.at(-1));
  });
});

describe('controls while playing', () => {
  it('should stand still while paused and go on from there', () => {
    const { clock, session, heard } = playing();
    session.start();
    clock.run(1010);
    session.replay.apply({ control: 'pause' });
    const before = heard.length;
    clock.run(1060);
    expect(heard).toHaveLength(before);
    expect(session.replay.view.paused).toBe(true);
    expect(session.replay.view.atS).toBeCloseTo(10, 6);
    session.replay.apply({ control: 'go-on' });
    clock.run(1061);
    expect(session.replay.view.atS).toBeCloseTo(11, 6);
    expect(heard.map(({ event }) => event)).toEqual(events.slice(0, heard.length));
  });

  it('should step event by event', () => {
    const { session, heard } = playing({ from: { control: 'to-event', at: 500 } });
    session.start();
    session.replay.apply({ control: 'pause' });
    heard.length = 0;
    session.replay.apply({ control: 'step-on' });
    session.replay.apply({ control: 'step-on' });
    expect(heard.map(({ event }) => event.seq)).toEqual([events[500]?.seq, events[501]?.seq]);
    session.replay.apply({ control: 'step-back' });
    expect(session.state).toEqual(states[501]);
  });

  it('should change speed from here on, without a jump', () => {
    const { clock, session } = playing();
    session.start();
    clock.run(1010);
    session.replay.apply({ control: 'set-speed', speed: 10 });
    clock.run(1012);
    expect(session.replay.view.atS).toBeCloseTo(30, 6);
  });

  it('should tell only what happens at a find when going there', () => {
    const { session, heard } = playing();
    session.start();
    session.replay.apply({ control: 'pause' });
    heard.length = 0;
    const controls: Control[] = [{ control: 'to-next' }, { control: 'to-next' }];
    for (const control of controls) session.replay.apply(control);
    const [first, second] = recording.waymarks;
    expect(heard.map(({ event }) => event)).toEqual([
      ...events.slice(first?.from, first?.to),
      ...events.slice(second?.from, second?.to),
    ]);
    expect(session.state).toEqual(states[second?.to ?? 0]);
  });
});

describe('a follower who remembers', () => {
  it('should be told to forget after a jump, and then what led up to the new place', () => {
    const { session } = playing();
    let told: Heard[] = [];
    let forgotten = 0;
    session.follow(
      (event) => told.push({ event, state: session.state, atS: 0 }),
      () => {
        forgotten += 1;
        told = [];
      },
    );
    session.start();
    session.replay.apply({ control: 'pause' });
    session.replay.apply({ control: 'to-time', t: 60 });
    expect(forgotten).toBe(1);
    const lead = events.filter(({ t }) => t > 39 && t <= 60);
    expect(told.map(({ event }) => event)).toEqual(lead);
    const last = told.at(-1);
    expect(last?.state).toEqual(states[events.indexOf(last?.event as Numbered) + 1]);
    expect(session.state).toEqual(states[(events.indexOf(last?.event as Numbered) ?? 0) + 1]);
  });

  it('should not be told again by one that only listens', () => {
    const { session, heard } = playing();
    session.start();
    session.replay.apply({ control: 'pause' });
    heard.length = 0;
    session.replay.apply({ control: 'to-time', t: 60 });
    expect(heard).toEqual([]);
  });
});

describe('what a session can be asked', () => {
  it('should begin where it is told, before anything is told', () => {
    const from: Control = { control: 'to-pin', pin: '8' };
    const { session, heard } = playing({ from });
    expect(session.state.plan.pins[session.state.cursor]?.pin).not.toBe(undefined);
    session.start();
    expect(heard[0]?.event).toMatchObject({ type: 'pin-reached', pin: '8' });
  });

  it('should end on quit, ignore what would change the walk, and go to a pin', async () => {
    const { session } = playing();
    session.start();
    session.act({ act: 'pause' });
    expect(session.replay.view.paused).toBe(true);
    session.act({ act: 'go-to', pin: '5' });
    expect(session.state.plan.pins[session.state.cursor]?.pin).toBe('5');
    const { state } = session;
    for (const act of ['open', 'next', 'skip', 'back', 'retake', 'note'] as const)
      session.act({ act });
    expect(session.state).toBe(state);
    session.act({ act: 'quit' });
    await expect(session.ended).resolves.toEqual({ how: 'closed' });
    session.replay.apply({ control: 'to-end' });
    expect(session.state).toBe(state);
  });

  it('should say that something has changed, also while nothing happens', () => {
    const { clock, session } = playing();
    let changes = 0;
    const stop = session.onChange(() => {
      changes += 1;
    });
    session.start();
    clock.run(1001);
    expect(changes).toBeGreaterThanOrEqual(4);
    stop();
    const before = changes;
    clock.run(1002);
    expect(changes).toBe(before);
  });
});
