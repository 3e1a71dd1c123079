// The screen's store with a played session: it moves with it, also backwards.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { english } from '../../../src/core/words/english.js';
import { createNotices } from '../../../src/session/notices.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { createScreenStore } from '../../../src/ui/live/screen-store.js';
import { played, playedSession } from '../support/played-session.js';

const key = (name: string) => ({ name, text: [...name].length === 1 ? name : '' });

const made = (speed = 1) => {
  const { clock, session } = playedSession(speed);
  const store = createScreenStore({
    session,
    words: english,
    keys: keyMapWith({}),
    repeat: () => undefined,
    notices: createNotices(),
  });
  session.start();
  const at = (t: number): void => {
    session.replay.apply({ control: 'to-time', t });
    store.refresh();
  };
  return { clock, session, store, at };
};

describe('the store of a played session', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('should show how it is played, and take its keys', () => {
    const { store, session } = made();
    expect(store.snapshot().replay).toMatchObject({ paused: false, speed: 1 });
    store.press(key('space'));
    store.press(key('up'));
    store.refresh();
    expect(store.snapshot().replay).toMatchObject({ paused: true, speed: 2 });
    store.press(key('n'));
    store.refresh();
    expect(store.snapshot().replay?.at).toBe(session.replay.recording.waymarks[0]?.to);
    store.stop();
  });

  it('should show the same trace after a jump as after having played there', () => {
    const direct = made();
    direct.session.replay.apply({ control: 'pause' });
    direct.at(60);
    const playing = made();
    playing.clock.run(60);
    playing.store.refresh();
    const { trace } = direct.store.snapshot();
    expect(trace.points.length).toBeGreaterThan(50);
    expect(trace.points).toEqual(playing.store.snapshot().trace.points);
    expect(trace.marks).toEqual(playing.store.snapshot().trace.marks);
    direct.store.stop();
    playing.store.stop();
  });

  it('should not keep what lies ahead when it goes back', () => {
    const { store, session, at } = made();
    session.replay.apply({ control: 'pause' });
    at(80);
    at(20);
    const { trace, state } = store.snapshot();
    expect(Math.max(...trace.points.map(({ t }) => t))).toBeLessThanOrEqual(20);
    expect(trace.points).not.toHaveLength(0);
    expect(state.t).toBeLessThanOrEqual(20);
    store.stop();
  });

  it('should leave the review when it goes back from the end', () => {
    const { store, session } = made();
    session.replay.apply({ control: 'to-end' });
    store.press(key('v'));
    store.refresh();
    expect(store.snapshot().mode.mode).toBe('review');
    expect(store.snapshot().state).toEqual(played.states.at(-1));
    store.press(key('home'));
    store.refresh();
    expect(store.snapshot().mode).toEqual({ mode: 'walk' });
    expect(store.snapshot().state.stage).toBe('ground-check');
    store.stop();
  });

  it('should keep words on the screen as long at any speed', () => {
    const { store, session, clock } = made(20);
    const note = played.events.find((event) => event.type === 'ground-checked');
    const t = note?.t ?? 0;
    session.replay.apply({ control: 'to-time', t: t - 0.01 });
    clock.run(clock.now() + 2);
    store.refresh();
    expect(session.state.t - t).toBeGreaterThan(30);
    expect(store.snapshot().said).not.toBeNull();
    store.stop();
  });
});
