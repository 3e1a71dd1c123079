// Going anywhere in a recording gives what folding every event up to there gives.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyControl, type Control } from '../../../src/core/replay/control.js';
import { beginPlayback, tell } from '../../../src/core/replay/playback.js';
import {
  eventAt,
  placeAt,
  placeAtTime,
  stretchEvents,
} from '../../../src/core/replay/recording.js';
import { numbered, opened, overload, recorded, recordedWalk } from './recorded-walk.js';

const walk = recordedWalk();
const { recording, events, states } = walk;

/** How many events have happened at a time, told one by one; a time that falls back is as late as the latest. */
const happenedBy = (times: readonly number[], t: number): number => {
  let latest = Number.NEGATIVE_INFINITY;
  for (const [at, time] of times.entries()) {
    latest = Math.max(latest, time);
    if (latest > t) return at;
  }
  return times.length;
};

const times = events.map(({ t }) => t);

describe('a recording', () => {
  it('should span several stretches, for these tests to mean anything', () => {
    expect(recording.checkpoints.length).toBeGreaterThanOrEqual(3);
    expect(recording.count).toBe(events.length);
    expect(recording.endState).toEqual(states.at(-1));
    expect(recording.endT).toBe(Math.max(...times));
  });

  it('should give every event in its place', () => {
    for (const at of [0, 1, stretchEvents - 1, stretchEvents, events.length - 1])
      expect(eventAt(recording, at)).toBe(events[at]);
    expect(eventAt(recording, events.length)).toBeNull();
    expect(eventAt(recording, stretchEvents * 1000)).toBeNull();
  });

  it('should stand anywhere as if every event before had been folded', () => {
    const anywhere = fc.integer({ min: -10, max: events.length + 10 });
    fc.assert(
      fc.property(anywhere, (wanted) => {
        const at = Math.min(events.length, Math.max(0, wanted));
        const place = placeAt(recording, wanted);
        expect(place.at).toBe(at);
        expect(place.state).toEqual(states[at]);
      }),
      { seed: 31, numRuns: 40 },
    );
  });

  it('should stand at any time as if every event up to it had been folded', () => {
    const anyTime = fc.oneof(
      fc.double({ min: -1, max: recording.endT + 1, noNaN: true }),
      fc.constantFrom(...times),
    );
    fc.assert(
      fc.property(anyTime, (t) => {
        const at = happenedBy(times, t);
        const place = placeAtTime(recording, t);
        expect(place.at).toBe(at);
        expect(place.t).toBe(Math.max(recording.startT, ...times.slice(0, at)));
        expect(place.state).toEqual(states[at]);
      }),
      { seed: 32, numRuns: 50 },
    );
  });

  it('should stand behind everything of one moment, also where that spans two stretches', () => {
    const session = recorded(
      numbered([
        opened,
        ...Array.from({ length: stretchEvents - 20 }, (_, at) => overload(at / 50)),
        ...Array.from({ length: 40 }, () => overload(90)),
        overload(91),
      ]),
    );
    expect(placeAtTime(session.recording, 90).at).toBe(session.events.length - 1);
    expect(placeAtTime(session.recording, 89.9).at).toBe(session.events.length - 41);
  });

  it('should stand at any time where time stands still or falls, as in a file made by others', () => {
    const steps = fc.array(fc.constantFrom(0, 0, 0.5, 1, -3), { minLength: 8, maxLength: 40 });
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (pattern, share) => {
        let t = 100;
        const odd = Array.from({ length: 2 * stretchEvents + 50 }, (_, at) => {
          t += pattern[at % pattern.length] as number;
          return overload(t);
        });
        const session = recorded(numbered([{ ...opened, t: 100 }, ...odd]));
        const sessionTimes = session.events.map((event) => event.t);
        const { startT, endT } = session.recording;
        for (const wanted of [startT + share * (endT - startT), Math.round(endT * share)]) {
          const place = placeAtTime(session.recording, wanted);
          expect(place.at).toBe(happenedBy(sessionTimes, wanted));
          expect(place.t).toBe(Math.max(startT, ...sessionTimes.slice(0, place.at)));
          expect(place.state).toEqual(session.states[place.at]);
        }
      }),
      { seed: 33, numRuns: 8 },
    );
  });
});

const anyControl: fc.Arbitrary<Control> = fc.oneof(
  fc.constantFrom<Control>(
    { control: 'step-on' },
    { control: 'step-back' },
    { control: 'to-start' },
    { control: 'to-end' },
    { control: 'to-next' },
    { control: 'to-previous' },
    { control: 'pause-or-go-on' },
    { control: 'faster' },
    { control: 'to-pin', pin: '8' },
    { control: 'to-pin', pin: 'no such pin' },
  ),
  fc.double({ min: -20, max: 200, noNaN: true }).map((t): Control => ({ control: 'to-time', t })),
  fc
    .double({ min: -40, max: 40, noNaN: true })
    .map((seconds): Control => ({ control: 'by-time', seconds })),
  fc.integer({ min: -5, max: 7000 }).map((at): Control => ({ control: 'to-event', at })),
);

describe('any sequence of controls', () => {
  it('should end where the state is the fold of what has happened, and as a direct jump there', () => {
    fc.assert(
      fc.property(fc.array(anyControl, { minLength: 1, maxLength: 12 }), (controls) => {
        let playback = beginPlayback(recording, 1);
        for (const control of controls) {
          const move = applyControl(recording, playback, control);
          playback = move.playback;
          for (let left = move.tell; left > 0; left -= 1) {
            const event = eventAt(recording, playback.place.at);
            if (event !== null) playback = tell(playback, event);
          }
        }
        const { at } = playback.place;
        expect(playback.place.state).toEqual(states[at]);
        const direct = applyControl(recording, beginPlayback(recording, 1), {
          control: 'to-event',
          at,
        });
        expect(direct.playback.place).toEqual(playback.place);
      }),
      { seed: 34, numRuns: 40 },
    );
  });
});
