// Puts a running session before its user in the chosen face, and returns when it has ended.

import type { CueMode } from '../core/cue-mode.js';
import type { Numbered } from '../core/events.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { type CuePlayer, createCuePlayer } from '../cues/cue-player.js';
import { onEndSignals } from '../session/end-signals.js';
import { createNotices, type Notices } from '../session/notices.js';
import type { Clock } from '../session/ports.js';
import type { RunningSession } from '../session/run-session.js';
import type { ChosenKeys } from '../store/key-file.js';
import type { ScreenSession } from '../ui/live/screen-store.js';
import type { Face } from './face.js';
import { printer } from './print-events.js';
import { complain, ringBell } from './say.js';

export interface Shown {
  readonly session: RunningSession & Pick<ScreenSession, 'replay'>;
  readonly face: Face;
  /** What the session file already says about this beginning. */
  readonly events: readonly Numbered[];
  readonly readings: boolean;
  readonly profile: Profile;
  readonly simulated: boolean;
  readonly cues: CueMode;
  /** Keys chosen in place of the usual ones, by act. */
  readonly keys: ChosenKeys;
  readonly clock: Clock;
}

export const showSession = async (shown: Shown): Promise<void> => {
  const notices = createNotices();
  const cues = soundCues(shown, notices);
  try {
    await show(shown, cues, notices);
  } finally {
    await cues.close();
  }
};

const show = async (shown: Shown, { repeat }: CuePlayer, notices: Notices): Promise<void> => {
  const { session, face, events, readings, profile, simulated, keys } = shown;
  if (face === 'screen') {
    const { runScreen } = await import('../ui/run-screen.js');
    const ended = runScreen({ session, words, profile, simulated, repeat, keys, notices });
    session.start();
    await ended;
    // Said on the screen already, which is gone, and perhaps to nobody who looked at it.
    notices.said.forEach(complain);
    return;
  }
  const print = printer(face, { readings, state: () => session.state });
  for (const event of events) print(event);
  session.follow(print);
  notices.follow(complain);
  // Ctrl-C and a plain kill close the session as "q" would.
  const stop = onEndSignals(() => session.act({ act: 'quit' }));
  watchTrouble(session, words.file);
  session.start();
  await session.ended;
  stop();
};

const words = english;

/** Everything that happens is also heard, the beginning included. */
const soundCues = ({ session, events, cues: mode, clock }: Shown, notices: Notices): CuePlayer => {
  const player = createCuePlayer({
    mode,
    words,
    clock,
    bell: ringBell,
    says: notices.say,
  });
  for (const event of events) player.follow(event, session.state);
  session.follow((event) => {
    player.follow(event, session.state);
    if (event.type === 'reply-given' && event.reply === 'repeat-cue') player.repeat();
  });
  let trouble: string | null = null;
  session.onChange(() => {
    if (session.trouble !== null && trouble === null) {
      const { t } = session.state;
      const detail = session.trouble;
      player.follow({ type: 'file-changed', t, change: 'blocked', detail }, session.state);
    }
    trouble = session.trouble;
  });
  return player;
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
    complain(says(last === null ? 'writable' : 'blocked', last ?? ''));
  });
};
