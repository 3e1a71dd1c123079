// What a person is shown of a playing recording, beside the walk itself.
import { nextWaymark } from './control.js';
import { isAtEnd, type Playback } from './playback.js';
import type { Recording } from './recording.js';
import type { Waymark } from './waymark.js';

export interface PlaybackView {
  /** Seconds since the session's start, and the session's whole length. */
  readonly atS: number;
  readonly lengthS: number;
  /** Events that have happened, of how many. */
  readonly at: number;
  readonly count: number;
  readonly speed: number;
  readonly paused: boolean;
  readonly ended: boolean;
  /** The waymark to come and how many seconds of the session lie before it, or null where there is none. */
  readonly next: (Waymark & { readonly inS: number }) | null;
  /** Places of the waymarks along the session, 0 at its start and 1 at its end. */
  readonly marks: readonly number[];
}

export const viewPlayback = (recording: Recording, playback: Playback): PlaybackView => {
  const { startT, endT, count, waymarks } = recording;
  const lengthS = endT - startT;
  const { place, t, speed, paused } = playback;
  const next = nextWaymark(recording, place.at);
  return {
    atS: Math.min(t, endT) - startT,
    lengthS,
    at: place.at,
    count,
    speed,
    paused,
    ended: isAtEnd(recording, playback),
    next: next === null ? null : { ...next, inS: Math.max(0, next.t - t) },
    marks: waymarks.map((waymark) => (lengthS > 0 ? (waymark.t - startT) / lengthS : 0)),
  };
};

/** Minutes and seconds, or hours as well: 1:05, 1:01:05. Seconds are cut, not rounded. */
export const clockTime = (seconds: number): string => {
  const whole = Math.max(0, Math.floor(seconds));
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
};
