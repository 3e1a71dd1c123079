// The walk on a terminal: screen and keys until the session has ended. Restores the terminal whatever happens.
import type { Profile } from '../core/profile/profile-format.js';
import type { Words } from '../core/words/words.js';
import type { Notices } from '../session/notices.js';
import { App } from './app.js';
import { detectAppearance } from './appearance.js';
import type { Surroundings } from './context.js';
import { keyMapWith } from './keys/key-map.js';
import { runLines } from './lines/run-lines.js';
import { createScreenStore, type ScreenSession } from './live/screen-store.js';
import { watchSize } from './live/terminal-size.js';
import { showOnTerminal } from './on-terminal.js';
import { quitOnSignals } from './signals.js';
import { watchTerminal } from './terminal.js';
import { type Appearance, createTheme } from './theme.js';

export interface ScreenOptions {
  readonly session: ScreenSession;
  readonly words: Words;
  /** For titles, cautions and the connector's landmarks; without it only the walk's plan is shown. */
  readonly profile?: Profile;
  readonly simulated?: boolean;
  /** Keys in place of the usual ones, by act. */
  readonly keys?: Readonly<Record<string, readonly string[]>>;
  /** What the terminal can show, where its environment does not tell. */
  readonly appearance?: Partial<Appearance>;
  /** Says the last cue again. */
  readonly repeat?: () => void;
  /** What is to be said besides what happens in the session. */
  readonly notices?: Pick<Notices, 'follow'>;
  /** Lines for a screen reader instead of a screen; absent: as INK_SCREEN_READER says. */
  readonly screenReader?: boolean;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
}

/** @throws RangeError when `keys` is no key map. */
export const runScreen = async (options: ScreenOptions): Promise<void> => {
  const { session, stdin = process.stdin, stdout = process.stdout } = options;
  const keys = keyMapWith(options.keys ?? {});
  const appearance = {
    ...detectAppearance(process.env, stdout.isTTY ? stdout.getColorDepth() : 1),
    ...options.appearance,
  };
  const stopSignals = quitOnSignals(() => session.act({ act: 'quit' }));
  const shown: Shown = {
    words: options.words,
    profile: options.profile ?? null,
    simulated: options.simulated ?? false,
    repeat: options.repeat ?? (() => undefined),
    notices: options.notices ?? { follow: () => undefined },
    session,
    keys,
    stdin,
    stdout,
  };
  const reader = options.screenReader ?? readsLines(process.env);
  try {
    if (reader) await showLines(shown, appearance);
    else await showScreen(shown, appearance);
  } finally {
    stopSignals();
  }
};

interface Shown extends Omit<Surroundings, 'theme'> {
  readonly session: ScreenSession;
  readonly repeat: () => void;
  readonly notices: Pick<Notices, 'follow'>;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
}

const showLines = (shown: Shown, { unicode }: Appearance): Promise<void> => {
  const { session, stdin, stdout } = shown;
  let open = true;
  watchTerminal(stdin, stdout, () => {
    open = false;
    session.act({ act: 'quit' });
  });
  const write = (text: string): void => void (open && stdout.write(text));
  return runLines({ ...shown, unicode, write });
};

const showScreen = async (shown: Shown, appearance: Appearance): Promise<void> => {
  const { session, words, keys, profile, simulated, repeat, notices, stdin, stdout } = shown;
  const theme = createTheme(appearance);
  const store = createScreenStore({ session, words, keys, repeat, notices });
  const surroundings = { words, theme, keys, profile, simulated };
  try {
    await showOnTerminal(
      <App store={store} size={watchSize(stdout)} surroundings={surroundings} />,
      {
        stdin,
        stdout,
        press: store.press,
        gone: () => session.act({ act: 'quit' }),
        ended: session.ended,
      },
    );
  } finally {
    store.stop();
  }
};

/** A screen reader is used, or the terminal has no cursor that could be moved. */
const readsLines = (env: NodeJS.ProcessEnv): boolean =>
  env.INK_SCREEN_READER === 'true' || env.TERM === 'dumb';
