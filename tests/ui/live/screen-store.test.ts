import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Act } from '../../../src/core/inputs.js';
import { type Verdict, verdicts } from '../../../src/core/verdict.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { english } from '../../../src/core/words/english.js';
import { createNotices } from '../../../src/session/notices.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { createScreenStore } from '../../../src/ui/live/screen-store.js';
import { steppedBench } from '../support/bench-session.js';

/** A session whose every move is the test's. */
const fakeSession = () => {
  let state: WalkState = { ...steppedBench().session.state, stage: 'walking' };
  const followers: ((event: Numbered) => void)[] = [];
  const watchers = new Set<() => void>();
  const acts: Act[] = [];
  return {
    get state() {
      return state;
    },
    trouble: null as string | null,
    act: (act: Act) => void acts.push(act),
    follow: (follower: (event: Numbered) => void) => void followers.push(follower),
    onChange: (call: () => void) => {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    ended: Promise.resolve(),
    acts,
    watchers,
    tell(event: WalkEvent, next: Partial<WalkState> = {}) {
      state = { ...state, t: event.t, ...next };
      for (const follower of followers) follower({ seq: 0, ...event });
      for (const call of watchers) call();
    },
  };
};

const reading = (t: number, value: number): WalkEvent => ({
  type: 'reading-taken',
  t,
  function: 'resistance',
  value,
});

const tally = Object.fromEntries(verdicts.map((verdict) => [verdict, 0])) as Record<
  Verdict,
  number
>;

const made = () => {
  const session = fakeSession();
  const repeat = vi.fn();
  const notices = createNotices();
  const keys = keyMapWith({});
  const store = createScreenStore({ session, words: english, keys, repeat, notices });
  return { session, store, repeat, notices };
};

describe('what the screen shows', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('should drop a word about the ground lead once the next ground is touched', () => {
    const { session, store } = made();
    session.tell({ type: 'ground-repeated', t: 3, value: 0.3 });
    store.refresh();
    expect(store.snapshot().said?.urgent).toBe(true);
    session.tell({ type: 'ground-touched', t: 4, value: 0.3, which: 2 });
    session.tell({ type: 'ground-checked', t: 4, outcome: 'good' });
    store.refresh();
    expect(store.snapshot().said).toMatchObject({ text: english.groundGood, urgent: false });
    store.stop();
  });

  it('should show a notice, and let what is said next take its place', () => {
    const { store, notices, session } = made();
    notices.say('no player works here');
    session.tell(reading(1, 100));
    vi.advanceTimersByTime(100);
    expect(store.snapshot().said).toMatchObject({ text: 'no player works here', urgent: false });
  });

  it('should be renewed at most fifteen times a second, and show the last state', () => {
    const { session, store } = made();
    let frames = 0;
    store.subscribe(() => {
      frames += 1;
    });
    for (let at = 0; at < 500; at += 1) {
      const taken = { t: at / 500, function: 'resistance', value: at } as const;
      session.tell(reading(at / 500, at), { reading: taken });
      vi.advanceTimersByTime(2);
    }
    vi.advanceTimersByTime(100);
    expect(frames).toBeGreaterThan(12);
    expect(frames).toBeLessThanOrEqual(17);
    expect(store.snapshot().state.reading).toMatchObject({ value: 499 });
  });

  it('should stay the same object while nothing changes', () => {
    const { session, store } = made();
    session.tell(reading(1, 5));
    vi.advanceTimersByTime(500);
    const shown = store.snapshot();
    vi.advanceTimersByTime(5000);
    expect(store.snapshot()).toBe(shown);
  });

  it('should keep something urgent before something that only informs', () => {
    const { session, store } = made();
    const said = (): string | undefined => {
      vi.advanceTimersByTime(100);
      return store.snapshot().said?.text;
    };
    session.tell({ type: 'walk-realigned', t: 1, shift: 1, pin: '7', because: 'fits-better' });
    expect(said()).toContain('Realigned');
    session.tell({ type: 'link-changed', t: 2, change: 'opened' });
    expect(said()).toContain('Realigned');
    session.tell(reading(30, 5));
    expect(said()).toBeUndefined();
    session.tell({ type: 'link-changed', t: 31, change: 'opened' });
    expect(said()).toBe('Link open');
  });

  it('should open the review when the walk is finished, but not over what is being typed', () => {
    const { session, store } = made();
    session.tell({ type: 'walk-finished', t: 9, tally }, { stage: 'finished' });
    vi.advanceTimersByTime(100);
    expect(store.snapshot().mode).toEqual({ mode: 'review', choice: 0 });

    const typing = made();
    typing.store.press({ name: 'w', text: 'w' });
    typing.session.tell({ type: 'walk-finished', t: 9, tally }, { stage: 'finished' });
    vi.advanceTimersByTime(100);
    expect(typing.store.snapshot().mode).toMatchObject({ mode: 'note' });
  });

  it('should pass acts on at once and ask for the last cue', () => {
    const { session, store, repeat } = made();
    store.press({ name: 'o', text: 'o' });
    store.press({ name: 'c', text: 'c' });
    expect(session.acts).toEqual([{ act: 'open' }]);
    expect(repeat).toHaveBeenCalledTimes(1);
  });

  it('should stop watching', () => {
    const { session, store } = made();
    session.tell(reading(1, 5));
    session.tell(reading(2, 5));
    store.stop();
    expect(session.watchers.size).toBe(0);
    expect(vi.getTimerCount()).toBe(0);
  });
});
