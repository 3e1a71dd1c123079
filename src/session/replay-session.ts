// Plays a recording to the same followers as a live session: screen, printer, cues. Nothing is decided and
// nothing is written; acts that would change the walk do nothing, and what was played can be played again.
import type { Numbered } from '../core/events.js';
import { applyControl, type Control, type Move } from '../core/replay/control.js';
import {
  beginPlayback,
  dueEvent,
  dueInS,
  fastest,
  isAtEnd,
  isHeld,
  letPass,
  tell,
} from '../core/replay/playback.js';
import { eventAt, goOn, placeAtTime, type Recording } from '../core/replay/recording.js';
import { type PlaybackView, viewPlayback } from '../core/replay/view.js';
import type { WalkState } from '../core/walk/state.js';
import type { Clock, Follower } from './ports.js';
import type { RunningSession, SessionEnd } from './run-session.js';

export interface ReplayControls {
  readonly view: PlaybackView;
  readonly recording: Recording;
  apply(control: Control): void;
}

export interface ReplaySession extends RunningSession {
  readonly replay: ReplayControls;
  /**
   * Tells every event as it is played. Whoever gives `forget` is told after a jump as well: first to forget, then
   * the last seconds before the new place, so that what hangs on them can be shown again.
   */
  follow(follower: Follower, forget?: () => void): void;
}

export interface ReplayParts {
  readonly recording: Recording;
  readonly clock: Clock;
  /** Seconds of the session in one second; `max` tells everything at once and ends. */
  readonly speed: number | 'max';
  /** Where to begin; the start where it is left out. */
  readonly from?: Control;
  /** Ends the session when the recording has ended, where nobody sits at a keyboard. */
  readonly closeAtEnd: boolean;
}

/** As much of what came before a place as a follower is told again, in seconds of the session. */
const recallS = 21;
/** Events told before other work gets its turn. */
const atATime = 5000;
/** While nothing happens the place is still shown moving, every so many seconds. */
const showEveryS = 0.25;

export const replaySession = (parts: ReplayParts): ReplaySession => {
  const { recording, clock } = parts;
  const followers: { readonly follow: Follower; readonly forget: (() => void) | undefined }[] = [];
  const watchers = new Set<() => void>();
  const begun = beginPlayback(recording, parts.speed === 'max' ? fastest : parts.speed);
  const first: Move =
    parts.from === undefined
      ? { playback: begun, tell: 0, jumped: false }
      : applyControl(recording, begun, parts.from);
  let { playback } = first;
  let shown: WalkState | null = null;
  let clockT = 0;
  let started = false;
  let over = false;
  let cancel = (): void => undefined;
  let finish: (end: SessionEnd) => void = () => undefined;
  const ended = new Promise<SessionEnd>((resolve) => {
    finish = resolve;
  });

  const changed = (): void => {
    for (const call of watchers) call();
  };

  const close = (): void => {
    if (over) return;
    over = true;
    cancel();
    changed();
    finish({ how: 'closed' });
  };

  const play = (event: Numbered): void => {
    playback = tell(playback, event);
    for (const { follow } of followers) follow(event);
  };

  const recall = (): void => {
    const recalling = followers.filter(({ forget }) => forget !== undefined);
    if (recalling.length === 0) return;
    for (const { forget } of recalling) forget?.();
    let place = placeAtTime(recording, playback.t - recallS);
    while (place.at < playback.place.at) {
      const event = eventAt(recording, place.at);
      if (event === null) break;
      place = goOn(place, event);
      shown = place.state;
      for (const { follow } of recalling) follow(event);
    }
    shown = null;
  };

  const catchUp = (): void => {
    const now = clock.now();
    playback = letPass(recording, playback, now - clockT);
    clockT = now;
  };

  const goOnPlaying = (): void => {
    cancel();
    catchUp();
    let told = 0;
    for (
      let event = dueEvent(recording, playback);
      event !== null && told < atATime && !over;
      event = dueEvent(recording, playback)
    ) {
      play(event);
      told += 1;
    }
    changed();
    if (isAtEnd(recording, playback) && parts.closeAtEnd) close();
    if (over) return;
    const waitS = dueInS(recording, playback);
    if (waitS !== null) cancel = clock.after(Math.min(waitS, showEveryS), goOnPlaying);
  };

  const carryOut = (move: Move): void => {
    playback = move.playback;
    if (move.jumped) recall();
    for (let left = move.tell; left > 0; left -= 1) {
      const event = eventAt(recording, playback.place.at);
      if (event !== null) play(event);
    }
    if (parts.speed === 'max') playRest();
    else goOnPlaying();
  };

  const playRest = (): void => {
    for (
      let event = eventAt(recording, playback.place.at);
      event !== null && !over && !isHeld(playback);
      event = eventAt(recording, playback.place.at)
    ) {
      play(event);
    }
    if (isHeld(playback)) changed();
    else close();
  };

  const apply = (control: Control): void => {
    if (over || !started) return;
    catchUp();
    carryOut(applyControl(recording, playback, control));
  };

  return {
    get state() {
      return shown ?? playback.place.state;
    },
    trouble: null,
    act({ act, pin }) {
      if (act === 'quit') close();
      else if (act === 'go-to' && pin !== undefined) apply({ control: 'to-pin', pin });
      else if (act === 'pause' || act === 'resume') apply({ control: 'pause-or-go-on' });
    },
    follow: (follow, forget) => void followers.push({ follow, forget }),
    onChange(call) {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    start() {
      clockT = clock.now();
      started = true;
      carryOut(first);
    },
    ended,
    replay: {
      get view() {
        return viewPlayback(recording, playback);
      },
      recording,
      apply,
    },
  };
};
