// What each wish does to a playing recording.
import { describe, expect, it } from 'vitest';
import {
  applyControl,
  type Control,
  nextWaymark,
  previousWaymark,
} from '../../../src/core/replay/control.js';
import {
  beginPlayback,
  dueEvent,
  dueInS,
  fastest,
  letPass,
  longestStillS,
  type Playback,
  slowest,
  standAt,
  tell,
} from '../../../src/core/replay/playback.js';
import { eventAt, placeAt } from '../../../src/core/replay/recording.js';
import { clockTime, viewPlayback } from '../../../src/core/replay/view.js';
import { numbered, opened, overload, recorded, recordedWalk } from './recorded-walk.js';

const { recording, events } = recordedWalk();
const start = beginPlayback(recording, 1);

const carryOut = (playback: Playback, control: Control): Playback => {
  const move = applyControl(recording, playback, control);
  let after = move.playback;
  for (let left = move.tell; left > 0; left -= 1) {
    const event = eventAt(recording, after.place.at);
    if (event !== null) after = tell(after, event);
  }
  return after;
};

describe('speed and pause', () => {
  it('should go up and down the ladder and stop at its ends', () => {
    let playback = start;
    const seen: number[] = [];
    for (let n = 0; n < 7; n += 1) {
      playback = carryOut(playback, { control: 'faster' });
      seen.push(playback.speed);
    }
    expect(seen).toEqual([2, 5, 10, 20, 50, 50, 50]);
    for (let n = 0; n < 9; n += 1) playback = carryOut(playback, { control: 'slower' });
    expect(playback.speed).toBe(slowest);
  });

  it('should find its way from a speed beside the ladder, and hold a given one within bounds', () => {
    const odd = { ...start, speed: 3 };
    expect(carryOut(odd, { control: 'faster' }).speed).toBe(5);
    expect(carryOut(odd, { control: 'slower' }).speed).toBe(2);
    expect(carryOut(start, { control: 'set-speed', speed: 1000 }).speed).toBe(fastest);
    expect(carryOut(start, { control: 'set-speed', speed: 0 }).speed).toBe(slowest);
  });

  it('should let no time pass while paused', () => {
    const paused = carryOut(start, { control: 'pause' });
    expect(letPass(recording, paused, 10)).toBe(paused);
    expect(dueInS(recording, paused)).toBeNull();
    const going = carryOut(paused, { control: 'go-on' });
    expect(letPass(recording, going, 10).t).toBe(start.t + 10);
    expect(carryOut(going, { control: 'pause-or-go-on' }).paused).toBe(true);
  });

  it('should make time pass as many times as fast', () => {
    const at5 = carryOut(start, { control: 'set-speed', speed: 5 });
    expect(letPass(recording, at5, 2).t).toBe(start.t + 10);
    const first = { ...at5, place: placeAt(recording, 1) };
    const next = eventAt(recording, 1);
    expect(dueInS(recording, first)).toBeCloseTo(((next?.t ?? 0) - first.t) / 5, 9);
  });
});

describe('steps', () => {
  it('should go one event on and pause', () => {
    const at = standAt(start, placeAt(recording, 100));
    const on = carryOut(at, { control: 'step-on' });
    expect([on.place.at, on.paused]).toEqual([101, true]);
    expect(on.t).toBe(events[100]?.t);
    const back = carryOut(on, { control: 'step-back' });
    expect([back.place.at, back.paused]).toEqual([100, true]);
  });

  it('should not leave the recording', () => {
    expect(carryOut(start, { control: 'step-back' }).place.at).toBe(0);
    const end = carryOut(start, { control: 'to-end' });
    expect(end.place.at).toBe(recording.count);
    expect(carryOut(end, { control: 'step-on' }).place.at).toBe(recording.count);
    expect(carryOut(end, { control: 'by-time', seconds: 100 }).t).toBe(recording.endT);
    expect(carryOut(start, { control: 'by-time', seconds: -100 }).t).toBe(recording.startT);
  });

  it('should seek by its own place in time, not by the latest event', () => {
    const between = { ...standAt(start, placeAt(recording, 50)), t: 7.25 };
    expect(carryOut(between, { control: 'by-time', seconds: 2.5 }).t).toBe(9.75);
  });
});

describe('waymarks', () => {
  it('should be walked through in order, forwards and back, each once', () => {
    const there: number[] = [];
    let playback = start;
    for (;;) {
      const next = carryOut(playback, { control: 'to-next' });
      if (next === playback) break;
      playback = next;
      there.push(playback.place.at);
    }
    expect(there).toEqual(recording.waymarks.map(({ to }) => to));
    expect(there.length).toBeGreaterThanOrEqual(6);
    const back: number[] = [];
    for (;;) {
      const previous = carryOut(playback, { control: 'to-previous' });
      if (previous === playback) break;
      playback = previous;
      back.push(playback.place.at);
    }
    expect(back).toEqual(there.slice(0, -1).reverse());
  });

  it('should show what was decided there: the verdict that is not normal stands', () => {
    const low = recording.waymarks.find(({ verdict }) => verdict === 'low');
    expect(low).toBeDefined();
    const at = carryOut(standAt(start, placeAt(recording, (low?.from ?? 0) - 1)), {
      control: 'to-next',
    });
    const index = at.place.state.plan.pins.findIndex(({ pin }) => pin === low?.pin);
    expect(at.place.state.pins[index]?.verdict).toBe('low');
  });

  it('should tell the events of the place, so that it sounds as it did', () => {
    const move = applyControl(recording, start, { control: 'to-next' });
    const first = recording.waymarks[0];
    expect(move.tell).toBe((first?.to ?? 0) - (first?.from ?? 0));
    expect(move.playback.place.at).toBe(first?.from);
    expect(move.jumped).toBe(true);
  });

  it('should know the next and the previous from the middle of nowhere', () => {
    const [first, second] = recording.waymarks;
    const between = (first?.to ?? 0) + 1;
    expect(nextWaymark(recording, between)).toBe(second);
    expect(previousWaymark(recording, between)).toBe(first);
    expect(previousWaymark(recording, 0)).toBeNull();
    expect(nextWaymark(recording, recording.count)).toBeNull();
  });
});

describe('a pin', () => {
  it('should be gone to where it was first waited for', () => {
    const at8 = carryOut(start, { control: 'to-pin', pin: '8' });
    expect(at8.place.state.plan.pins[at8.place.state.cursor]?.pin).toBe('8');
    const reached = events.findIndex((event) => event.type === 'pin-reached' && event.pin === '8');
    expect(at8.place.at).toBe(reached + 1);
  });

  it('should leave everything as it is when it was never reached', () => {
    expect(carryOut(start, { control: 'to-pin', pin: '999' })).toBe(start);
  });
});

describe('a stretch in which nothing happens', () => {
  const gap = recorded(
    numbered([opened, overload(1), { ...overload(5000) }, overload(5000.5)]),
  ).recording;

  it('should be cut short, and leave the playing at the time of what comes after it', () => {
    let playback = standAt(beginPlayback(gap, 2), placeAt(gap, 2));
    expect(dueInS(gap, playback)).toBe(longestStillS / 2);
    playback = letPass(gap, playback, longestStillS / 2);
    const event = dueEvent(gap, playback);
    expect(event?.t).toBe(5000);
    if (event !== null) playback = tell(playback, event);
    expect(playback.t).toBe(5000);
    expect(dueInS(gap, playback)).toBe(0.25);
  });
});

describe('the view', () => {
  it('should count time from the start of the session and end at its end', () => {
    const view = viewPlayback(recording, carryOut(start, { control: 'to-time', t: 60 }));
    expect(view.atS).toBe(60 - recording.startT);
    expect(view.ended).toBe(false);
    expect(view.next?.t).toBeGreaterThan(60);
    const late = { ...carryOut(start, { control: 'to-end' }), t: 1e9 };
    const end = viewPlayback(recording, late);
    expect([end.atS, end.ended, end.next]).toEqual([end.lengthS, true, null]);
    expect(end.marks).toHaveLength(recording.waymarks.length);
    for (const mark of end.marks) expect(mark).toBeGreaterThanOrEqual(0);
    expect(Math.max(...end.marks)).toBeLessThanOrEqual(1);
  });

  it.each([
    [0, '0:00'],
    [59.99, '0:59'],
    [65, '1:05'],
    [3665, '1:01:05'],
    [-1, '0:00'],
  ])('should write %d seconds as %s', (seconds, written) => {
    expect(clockTime(seconds)).toBe(written);
  });
});
