// The loop of a session: input, decide, append to the file, then tell. Nothing is shown that the file does not
// hold. When the file cannot be written the intake stops with a word, and goes on once it can be again.
import type { Numbered, WalkEvent } from '../core/events.js';
import type { Act, Input } from '../core/inputs.js';
import { inputTime } from '../core/inputs.js';
import { type Decision, decide } from '../core/walk/decide.js';
import type { WalkState } from '../core/walk/state.js';
import { readySuspects } from '../core/walk/tell-suspects.js';
import type { Clock, Feed, Follower, Journal } from './ports.js';

export type SessionEnd =
  /** The technician or the end of the feed closed it. */
  | { readonly how: 'closed' }
  /** The link was never there. */
  | { readonly how: 'no-link'; readonly reason: string }
  /** The session file could not be written. */
  | { readonly how: 'unwritten'; readonly reason: string };

export interface SessionParts {
  readonly state: WalkState;
  readonly journal: Journal;
  readonly feed: Feed;
  readonly clock: Clock;
  /** Turns the clock's seconds into the session's. */
  readonly sessionTime: (clockT: number) => number;
  /** Closes the session as soon as the walk is finished, where nobody sits at a keyboard. */
  readonly closeWhenFinished: boolean;
  /** How long to try again when the file cannot be written, seconds. */
  readonly writePatienceS: number;
}

export interface RunningSession {
  readonly state: WalkState;
  /** Why nothing is taken in at present, or null. */
  readonly trouble: string | null;
  act(act: Act): void;
  follow(follower: Follower): void;
  /** Called after every change, with nothing: whoever wants more reads `state` and `trouble`. */
  onChange(call: () => void): () => void;
  start(): void;
  readonly ended: Promise<SessionEnd>;
}

const retryS = 0.5;
/** The screen comes first, and no pin is read that early. */
const readyAfterS = 0.5;
/** Events after which the disk is asked for at once; readings in between ride along. */
const unworthOfSync: ReadonlySet<WalkEvent['type']> = new Set(['reading-taken', 'touch-captured']);

export const runSession = (parts: SessionParts): RunningSession => {
  const { journal, feed, clock, sessionTime } = parts;
  const followers: Follower[] = [];
  const watchers = new Set<() => void>();
  const startT = parts.state.t;
  let state = parts.state;
  let blocked: { decision: Decision; sinceT: number; reason: string } | null = null;
  let over = false;
  let finish: (end: SessionEnd) => void = () => undefined;
  const ended = new Promise<SessionEnd>((resolve) => {
    finish = resolve;
  });

  const changed = (): void => {
    for (const call of watchers) call();
  };

  const end = (how: SessionEnd): void => {
    if (over) return;
    over = true;
    feed
      .stop()
      .then(() => journal.close())
      .then(
        () => finish(how),
        (error: unknown) => finish({ how: 'unwritten', reason: messageOf(error) }),
      );
  };

  const tell = (events: readonly Numbered[]): void => {
    for (const event of events) for (const follower of followers) follower(event);
    changed();
  };

  const write = (decision: Decision): boolean => {
    try {
      const numbered = journal.append(decision.events);
      if (numbered.some(({ type }) => !unworthOfSync.has(type))) journal.sync();
      state = decision.state;
      tell(numbered);
      return true;
    } catch (error) {
      blocked = { decision, sinceT: clock.now(), reason: messageOf(error) };
      clock.after(retryS, writeAgain);
      changed();
      return false;
    }
  };

  const writeAgain = (): void => {
    if (blocked === null || over) return;
    const { decision, sinceT, reason } = blocked;
    blocked = null;
    if (write(decision)) {
      const t = sessionTime(sinceT);
      take({ kind: 'file', t: Math.max(t, state.t), change: 'blocked', detail: reason });
      take({ kind: 'file', t: now(), change: 'writable', detail: 'written again' });
    } else if (blocked !== null) {
      blocked = { decision, sinceT, reason };
      if (clock.now() - sinceT > parts.writePatienceS) end({ how: 'unwritten', reason });
    }
  };

  const now = (): number => Math.max(state.t, sessionTime(clock.now()));

  const take = (input: Input): void => {
    if (over || blocked !== null || !write(decide(state, input))) return;
    if (input.kind === 'link' && input.change === 'failed') {
      end({ how: 'no-link', reason: input.detail ?? 'the link could not be opened' });
    } else if (input.kind === 'link' && input.change === 'ended') {
      take({ kind: 'act', t: state.t, act: { act: 'quit' } });
    } else if (state.stage === 'closed') {
      end({ how: 'closed' });
    } else if (state.stage === 'finished' && state.press === null && parts.closeWhenFinished) {
      take({ kind: 'act', t: state.t, act: { act: 'quit' } });
    }
  };

  return {
    get state() {
      return state;
    },
    get trouble() {
      return blocked?.reason ?? null;
    },
    act(act) {
      if (blocked !== null && act.act === 'quit') end({ how: 'unwritten', reason: blocked.reason });
      else take({ kind: 'act', t: feed.ownTime ? state.t : now(), act });
    },
    follow: (follower) => void followers.push(follower),
    onChange(call) {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    start: () => {
      if (over) return;
      clock.after(readyAfterS, () => readySuspects(state));
      feed.start((input) => {
        const given = inputTime(input);
        const t = feed.ownTime ? startT + given : sessionTime(given);
        take(atTime(input, Math.max(state.t, t)));
      });
    },
    ended,
  };
};

/** The input on the session's time, which never falls. */
const atTime = (input: Input, t: number): Input => {
  if (inputTime(input) === t) return input;
  return input.kind === 'reading'
    ? { kind: 'reading', reading: { ...input.reading, t } }
    : { ...input, t };
};

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
