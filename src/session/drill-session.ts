// A recorded session played to a trainee: it stops before each answer would be given away, takes the trainee's own,
// explains, and goes on.
import {
  askedAt,
  beginDrill,
  type DrillRun,
  nextQuestion,
  takeAnswer,
} from '../core/drill/drill-run.js';
import type { DrillQuestion } from '../core/drill/question.js';
import type { Numbered } from '../core/events.js';
import { type ReplayParts, type ReplaySession, replaySession } from './replay-session.js';

export interface DrillView extends DrillRun {
  readonly asked: DrillQuestion | null;
  /** All is played, answered and explained. */
  readonly done: boolean;
}

export interface DrillControls {
  readonly view: DrillView;
  answer(choice: string): void;
  /** Leaves the explanation. */
  goOn(): void;
  /** Straight to the next question; the last seconds before it are shown. */
  skipAhead(): void;
}

export interface DrillSession extends ReplaySession {
  readonly drill: DrillControls;
}

export const drillSession = (
  parts: Omit<ReplayParts, 'from'> & { readonly questions: readonly DrillQuestion[] },
): DrillSession => {
  let run = beginDrill(parts.questions);
  const holdAtNext = () => ({ control: 'hold-at', at: nextQuestion(run)?.at ?? null }) as const;
  const session = replaySession({ ...parts, from: holdAtNext() });
  const { replay } = session;
  const watchers = new Set<() => void>();
  session.onChange(() => {
    for (const call of watchers) call();
  });
  const changed = (): void => {
    for (const call of watchers) call();
  };

  const drill: DrillControls = {
    get view() {
      const { at, ended } = replay.view;
      return { ...run, asked: askedAt(run, at), done: ended && !run.explaining };
    },
    answer(choice) {
      const after = takeAnswer(run, replay.view.at, choice);
      if (after === run) return;
      run = after;
      changed();
    },
    goOn() {
      if (!run.explaining) return;
      run = { ...run, explaining: false };
      replay.apply(holdAtNext());
      changed();
    },
    skipAhead() {
      const next = nextQuestion(run);
      if (run.explaining || askedAt(run, replay.view.at) !== null) return;
      replay.apply(next === null ? { control: 'to-end' } : { control: 'to-event', at: next.at });
    },
  };

  return {
    get state() {
      return session.state;
    },
    trouble: null,
    act: (act) => {
      if (act.act === 'quit') session.act(act);
    },
    follow: (follow, forget) =>
      session.follow((event) => {
        if (!givesAway(event)) follow(event);
      }, forget),
    onChange(call) {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    start: () => session.start(),
    ended: session.ended,
    replay,
    drill,
  };
};

/** A teacher's note says what the trainee is to find out. */
const givesAway = (event: Numbered): boolean => event.type === 'act-taken' && event.act === 'note';
