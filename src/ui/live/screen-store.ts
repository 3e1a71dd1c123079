// What the screen shows at a moment, renewed at most fifteen times a second however fast readings come. Also
// keeps what the walk's state does not: the trace, the latest line of words, and the mode of the keys.
import type { Numbered } from '../../core/events.js';
import type { Act } from '../../core/inputs.js';
import type { PlaybackView } from '../../core/replay/view.js';
import { addMark, addReading, emptyTrace, type Trace } from '../../core/select/trace.js';
import type { WalkState } from '../../core/walk/state.js';
import { describe } from '../../core/words/describe.js';
import type { Words } from '../../core/words/words.js';
import type { Notices } from '../../session/notices.js';
import type { ReplayControls } from '../../session/replay-session.js';
import type { KeyMap } from '../keys/key-map.js';
import type { Key } from '../keys/parse-keys.js';
import { type Mode, pressKey, walkMode } from '../mode.js';
import { pressReplayKey } from '../replay-mode.js';

/** As much of a running session as a screen needs. */
export interface ScreenSession {
  readonly state: WalkState;
  readonly trouble: string | null;
  act(act: Act): void;
  /** A played session that jumps has its follower `forget`, and tells again what led up to the new place. */
  follow(follower: (event: Numbered) => void, forget?: () => void): void;
  /** Present while a saved session is played. */
  readonly replay?: ReplayControls;
  onChange(call: () => void): () => void;
  readonly ended: Promise<unknown>;
}

export interface Said {
  readonly text: string;
  readonly t: number;
  /** Something to act on, not only to know. */
  readonly urgent: boolean;
}

export interface Snapshot {
  readonly state: WalkState;
  readonly trouble: string | null;
  readonly trace: Trace;
  readonly mode: Mode;
  /** The last thing said that is not plain to see elsewhere, or null. */
  readonly said: Said | null;
  /** How a saved session is being played; null in a walk. */
  readonly replay: PlaybackView | null;
}

export interface ScreenStore {
  subscribe(call: () => void): () => void;
  snapshot(): Snapshot;
  /** Shows the present without waiting for the next frame. */
  refresh(): void;
  press(key: Key): void;
  stop(): void;
}

const frameMs = 1000 / 15;
const saidForS = 8;
const urgentForS = 20;
/** Said by the large letters already. */
const shownElsewhere: ReadonlySet<Numbered['type']> = new Set([
  'pin-reached',
  'question-asked',
  'question-answered',
  'walk-held',
  'walk-freed',
  'walk-paused',
  'session-opened',
  'pin-judged',
  'walk-finished',
  'cue-given',
  'press-judged',
  'press-compared',
]);
const urgent: ReadonlySet<Numbered['type']> = new Set([
  'walk-realigned',
  'ground-doubted',
  'ground-missed',
  'ground-repeated',
  'act-refused',
]);

/** What was urgent about the ground lead is settled by these. */
const settled: ReadonlySet<Numbered['type']> = new Set(['ground-touched', 'ground-checked']);

export interface StoreParts {
  readonly session: ScreenSession;
  readonly words: Words;
  readonly keys: KeyMap;
  readonly repeat: () => void;
  readonly notices: Pick<Notices, 'follow'>;
}

export const createScreenStore = (parts: StoreParts): ScreenStore => {
  const { session, words, keys, repeat, notices } = parts;
  const watchers = new Set<() => void>();
  let trace: Trace = emptyTrace;
  let mode: Mode = walkMode;
  let said: Said | null = null;
  let stage = session.state.stage;
  let timer: NodeJS.Timeout | undefined;
  let lastMs = Number.NEGATIVE_INFINITY;

  const take = (): Snapshot => {
    const replay = session.replay?.view ?? null;
    return {
      state: session.state,
      trouble: session.trouble,
      trace,
      mode,
      said: said !== null && isFresh(said, session.state.t, replay?.speed) ? said : null,
      replay,
    };
  };
  let shown = take();

  const renew = (): void => {
    timer = undefined;
    lastMs = performance.now();
    shown = take();
    for (const call of watchers) call();
  };
  const changed = (): void => {
    if (timer !== undefined) return;
    const waitMs = lastMs + frameMs - performance.now();
    if (waitMs <= 0) renew();
    else timer = setTimeout(renew, waitMs);
  };

  const follow = (event: Numbered): void => {
    const { state } = session;
    if (event.type === 'reading-taken') trace = addReading(trace, state);
    const anew = event.type === 'pin-judged' && event.anew === true;
    if (event.type === 'pin-judged' && !anew && event.verdict !== 'unread') {
      trace = addMark(trace, { t: event.t, pin: event.pin, verdict: event.verdict });
    }
    // Beside the large letters: how sure that is, why, and what would help.
    const isOdd = event.type === 'pin-judged' && event.verdict !== 'normal';
    if (shownElsewhere.has(event.type) && !anew && !isOdd) return;
    if (event.type === 'act-taken' && event.act !== 'note') return;
    const text =
      event.type === 'act-refused'
        ? words.screen.refused(event.act, event.reason)
        : describe(event, state, words);
    const stands = said?.urgent === true && isFresh(said, event.t) && !settled.has(event.type);
    if (text === null || (stands && !urgent.has(event.type))) return;
    said = { text, t: event.t, urgent: urgent.has(event.type) };
  };
  const forget = (): void => {
    trace = emptyTrace;
    said = null;
    if (mode.mode === 'review') mode = walkMode;
  };
  session.follow(follow, forget);
  notices.follow((text) => {
    said = { text, t: session.state.t, urgent: false };
    changed();
  });
  const unwatch = session.onChange(() => {
    const now = session.state.stage;
    const isWalk = session.state.alone === null;
    if (isWalk && now === 'finished' && stage !== 'finished' && mode.mode === 'walk') {
      mode = { mode: 'review', choice: 0 };
    }
    if (now === 'walking' && mode.mode === 'review' && stage === 'finished') mode = walkMode;
    stage = now;
    changed();
  });

  return {
    subscribe(call) {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    snapshot: () => shown,
    refresh() {
      clearTimeout(timer);
      renew();
    },
    press(key) {
      const step =
        session.replay === undefined
          ? { ...pressKey(mode, key, session.state, keys), control: null }
          : pressReplayKey(mode, key, session.state, keys);
      mode = step.mode;
      for (const act of step.acts) session.act(act);
      if (step.control !== null) session.replay?.apply(step.control);
      if (step.repeat === true) repeat();
      changed();
    },
    stop() {
      clearTimeout(timer);
      timer = undefined;
      unwatch();
    },
  };
};

/** Something urgent stays longer, and nothing less urgent takes its place meanwhile. */
const isFresh = (said: Said, t: number, speed = 1): boolean =>
  t - said.t < speed * (said.urgent ? urgentForS : saidForS);
