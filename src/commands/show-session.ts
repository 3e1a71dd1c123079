// Puts a running session before its user in the chosen face, and returns when it has ended.
import type { Numbered } from '../core/events.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import type { RunningSession } from '../session/run-session.js';
import type { Face } from './face.js';
import { printJson, printPlain } from './print-events.js';

export interface Shown {
  readonly session: RunningSession;
  readonly face: Face;
  /** What the session file already says about this beginning. */
  readonly events: readonly Numbered[];
  readonly readings: boolean;
  readonly profile: Profile;
  readonly simulated: boolean;
}

export const showSession = async (shown: Shown): Promise<void> => {
  const { session, face, events, readings, profile, simulated } = shown;
  const words = english;
  if (face === 'screen') {
    const { runScreen } = await import('../ui/run-screen.js');
    const ended = runScreen({ session, words, profile, simulated });
    session.start();
    await ended;
    return;
  }
  const write = (text: string): void => void process.stdout.write(text);
  const print =
    face === 'json' ? printJson(write, readings) : printPlain(write, words, () => session.state);
  for (const event of events) print(event);
  session.follow(print);
  const stop = quitOnSignal(session);
  watchTrouble(session, words.file);
  session.start();
  await session.ended;
  stop();
};

/** Ctrl-C and a plain kill close the session as "q" would. */
const quitOnSignal = (session: RunningSession): (() => void) => {
  const quit = (): void => session.act({ act: 'quit' });
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.once(signal, quit);
  return () => {
    for (const signal of signals) process.removeListener(signal, quit);
  };
};

/** Trouble with the file cannot be in the file: it goes to stderr. */
const watchTrouble = (
  session: RunningSession,
  says: (change: 'blocked' | 'writable', detail: string) => string,
): void => {
  let last: string | null = null;
  session.onChange(() => {
    if (session.trouble === last) return;
    last = session.trouble;
    process.stderr.write(`${says(last === null ? 'writable' : 'blocked', last ?? '')}\n`);
  });
};
