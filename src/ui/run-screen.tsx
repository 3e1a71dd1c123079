// The walk on a terminal: screen and keys until the session has ended. Restores the terminal whatever happens.
import { render } from 'ink';
import type { Profile } from '../core/profile/profile-format.js';
import type { Words } from '../core/words/words.js';
import type { Notices } from '../session/notices.js';
import { App } from './app.js';
import { detectAppearance } from './appearance.js';
import type { Surroundings } from './context.js';
import { keyMapWith } from './keys/key-map.js';
import { listenToKeys } from './keys/keyboard.js';
import { runLines } from './lines/run-lines.js';
import { createScreenStore, type ScreenSession } from './live/screen-store.js';
import { watchSize } from './live/terminal-size.js';
import { inkTerminal, takeTerminal, watchTerminal } from './terminal.js';
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
  const stopSignals = quitOnSignals(session);
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
  const giveBack = takeTerminal(stdout);
  const stopKeys = listenToKeys(stdin, store.press);
  const terminal = inkTerminal(stdout);
  watchTerminal(stdin, stdout, () => {
    terminal.close();
    session.act({ act: 'quit' });
  });
  const surroundings = { words, theme, keys, profile, simulated };
  const instance = render(
    <App store={store} size={watchSize(stdout)} surroundings={surroundings} />,
    {
      stdout: terminal.output,
      exitOnCtrlC: false,
      patchConsole: false,
      incrementalRendering: false,
      isScreenReaderEnabled: false,
      // Twice the rate of the store: an equal one would beat with it.
      maxFps: 30,
    },
  );
  try {
    await session.ended;
  } finally {
    store.stop();
    stopKeys();
    // Ink writes its last frame once more when it goes; the screen it belongs to is left at once.
    terminal.close();
    instance.unmount();
    giveBack();
  }
};

/** A screen reader is used, or the terminal has no cursor that could be moved. */
const readsLines = (env: NodeJS.ProcessEnv): boolean =>
  env.INK_SCREEN_READER === 'true' || env.TERM === 'dumb';

const signals = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 } as const;

/** The first signal closes the session as the quit key would; a second one does not wait for that. */
const quitOnSignals = (session: ScreenSession): (() => void) => {
  const handlers = Object.entries(signals).map(([signal, number]) => {
    let again = false;
    const handle = (): void => {
      process.exitCode = 128 + number;
      if (again) process.exit();
      again = true;
      session.act({ act: 'quit' });
    };
    process.on(signal, handle);
    return () => process.off(signal, handle);
  });
  return () => {
    for (const stop of handlers) stop();
  };
};
