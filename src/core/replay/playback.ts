// A recording being played: where it stands, how fast it goes, and whether it goes at all. Pure: time that has
// passed comes in as a number, and what is due is told one event at a time.
import type { Numbered } from '../events.js';
import { eventAt, goOn, type Place, placeAt, placeAtTime, type Recording } from './recording.js';

export const speeds = [0.25, 0.5, 1, 2, 5, 10, 20, 50] as const;
export const slowest = 0.25;
export const fastest = 50;

/** A stretch in which nothing at all happens is cut to this much of the session's time, in seconds. */
export const longestStillS = 6;

/** An event this near is due now: a clock cannot wait for less than it can tell. Seconds of the session. */
const nowS = 1e-6;

export interface Playback {
  readonly place: Place;
  /** Where the playing stands between the place's latest event and the next one, in the session's seconds. */
  readonly t: number;
  /** Seconds of the session in one second. */
  readonly speed: number;
  readonly paused: boolean;
  /** Playing waits where so many events have happened; null where nothing is waited for. */
  readonly heldAt: number | null;
}

export const beginPlayback = (recording: Recording, speed: number): Playback => {
  const place = placeAt(recording, 0);
  return { place, t: place.t, speed, paused: false, heldAt: null };
};

export const isAtEnd = ({ count }: Recording, { place }: Playback): boolean => place.at >= count;

export const isHeld = ({ place, heldAt }: Playback): boolean =>
  heldAt !== null && place.at >= heldAt;

/** Lets real seconds pass. What has become due is still to be told. */
export const letPass = (recording: Recording, playback: Playback, seconds: number): Playback => {
  if (isStill(recording, playback)) return playback;
  return { ...playback, t: playback.t + Math.max(0, seconds) * playback.speed };
};

const isStill = (recording: Recording, playback: Playback): boolean =>
  playback.paused || isHeld(playback) || isAtEnd(recording, playback);

/** The next event, if it is due by now; none is while paused or held. */
export const dueEvent = (recording: Recording, playback: Playback): Numbered | null => {
  const event = isStill(recording, playback) ? null : eventAt(recording, playback.place.at);
  return event !== null && playback.t >= dueT(playback, event) - nowS ? event : null;
};

/** Real seconds until the next event is due; null where none will be. */
export const dueInS = (recording: Recording, playback: Playback): number | null => {
  const event = isStill(recording, playback) ? null : eventAt(recording, playback.place.at);
  if (event === null) return null;
  return Math.max(0, dueT(playback, event) - playback.t) / playback.speed;
};

/** The event has happened. A playing that cut a still stretch short stands at the event's own time. */
export const tell = (playback: Playback, event: Numbered): Playback => {
  const place = goOn(playback.place, event);
  return { ...playback, place, t: Math.max(playback.t, place.t) };
};

export const standAt = (playback: Playback, place: Place): Playback => ({
  ...playback,
  place,
  t: place.t,
});

/** Stands where everything up to and with `t` has happened. */
export const standAtTime = (recording: Recording, playback: Playback, t: number): Playback => {
  const within = Math.min(recording.endT, Math.max(recording.startT, t));
  return { ...playback, place: placeAtTime(recording, within), t: within };
};

const dueT = ({ place }: Playback, event: Numbered): number =>
  Math.min(event.t, place.t + longestStillS);
