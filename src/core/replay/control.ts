// What a person can ask of a playing recording. Pure: each wish gives where to stand and how many events to tell
// from there, so that arriving somewhere looks and sounds as it did when it happened.
import {
  fastest,
  isAtEnd,
  type Playback,
  slowest,
  speeds,
  standAt,
  standAtTime,
} from './playback.js';
import { placeAt, type Recording } from './recording.js';
import type { Waymark } from './waymark.js';

export type Control =
  | { readonly control: 'pause' | 'go-on' | 'pause-or-go-on' }
  /** Waits where so many events have happened, or no longer waits. */
  | { readonly control: 'hold-at'; readonly at: number | null }
  | { readonly control: 'faster' | 'slower' }
  | { readonly control: 'set-speed'; readonly speed: number }
  /** One event on or back. */
  | { readonly control: 'step-on' | 'step-back' }
  | { readonly control: 'to-start' | 'to-end' }
  | { readonly control: 'to-next' | 'to-previous' }
  /** In the session's own seconds. */
  | { readonly control: 'to-time'; readonly t: number }
  | { readonly control: 'by-time'; readonly seconds: number }
  /** Where so many events have happened. */
  | { readonly control: 'to-event'; readonly at: number }
  /** Where the pin was first waited for; nothing happens for one that never was. */
  | { readonly control: 'to-pin'; readonly pin: string };

export interface Move {
  readonly playback: Playback;
  /** How many of the next events are to be told at once. */
  readonly tell: number;
  /** What was shown before does not lead up to where it stands now. */
  readonly jumped: boolean;
}

export const applyControl = (recording: Recording, playback: Playback, wish: Control): Move => {
  switch (wish.control) {
    case 'pause':
      return stay({ ...playback, paused: true });
    case 'go-on':
      return stay({ ...playback, paused: false });
    case 'pause-or-go-on':
      return stay({ ...playback, paused: !playback.paused });
    case 'hold-at':
      return stay({ ...playback, heldAt: wish.at });
    case 'faster':
      return stay(withSpeed(playback, speeds.find((speed) => speed > playback.speed) ?? fastest));
    case 'slower':
      return stay(
        withSpeed(playback, speeds.findLast((speed) => speed < playback.speed) ?? slowest),
      );
    case 'set-speed':
      return stay(withSpeed(playback, wish.speed));
    case 'step-on':
      return {
        playback: { ...playback, paused: true },
        tell: isAtEnd(recording, playback) ? 0 : 1,
        jumped: false,
      };
    case 'step-back':
      return toEvent(recording, { ...playback, paused: true }, playback.place.at - 1);
    case 'to-start':
      return toEvent(recording, playback, 0);
    case 'to-end':
      return toEvent(recording, playback, recording.count);
    case 'to-next':
      return toWaymark(recording, playback, nextWaymark(recording, playback.place.at));
    case 'to-previous':
      return toWaymark(recording, playback, previousWaymark(recording, playback.place.at));
    case 'to-time':
      return jump(standAtTime(recording, playback, wish.t));
    case 'by-time':
      return jump(standAtTime(recording, playback, playback.t + wish.seconds));
    case 'to-event':
      return toEvent(recording, playback, wish.at);
    case 'to-pin': {
      const at = recording.reached.get(wish.pin);
      if (at === undefined) return stay(playback);
      return { ...toEvent(recording, playback, at), tell: 1 };
    }
  }
};

/** The first waymark that has not happened yet at a place. */
export const nextWaymark = ({ waymarks }: Recording, at: number): Waymark | null =>
  waymarks.find(({ to }) => to > at) ?? null;

/** The last waymark that lies wholly before a place. */
export const previousWaymark = ({ waymarks }: Recording, at: number): Waymark | null =>
  waymarks.findLast(({ to }) => to < at) ?? null;

const stay = (playback: Playback): Move => ({ playback, tell: 0, jumped: false });
const jump = (playback: Playback): Move => ({ playback, tell: 0, jumped: true });

const withSpeed = (playback: Playback, speed: number): Playback => ({
  ...playback,
  speed: Math.min(fastest, Math.max(slowest, speed)),
});

const toEvent = (recording: Recording, playback: Playback, at: number): Move =>
  jump(standAt(playback, placeAt(recording, at)));

const toWaymark = (recording: Recording, playback: Playback, waymark: Waymark | null): Move =>
  waymark === null
    ? stay(playback)
    : { ...toEvent(recording, playback, waymark.from), tell: waymark.to - waymark.from };
