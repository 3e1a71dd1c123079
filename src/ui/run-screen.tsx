// The walk on a terminal: screen and keys until the session has ended. Restores the terminal whatever happens.
import { render } from 'ink';
import type { Profile } from '../core/profile/profile-format.js';
import type { Words } from '../core/words/words.js';
import { App } from './app.js';
import { detectAppearance } from './appearance.js';
import { keyMapWith } from './keys/key-map.js';
import { listenToKeys } from './keys/keyboard.js';
import { createScreenStore, type ScreenSession } from './live/screen-store.js';
import { watchSize } from './live/terminal-size.js';
import { inkOutput, takeTerminal } from './terminal.js';
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
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
}

/** @throws RangeError when `keys` is no key map. */
export const runScreen = async (options: ScreenOptions): Promise<void> => {
  const { session, words, profile = null, simulated = false } = options;
  const { stdin = process.stdin, stdout = process.stdout } = options;
  const keys = keyMapWith(options.keys ?? {});
  const theme = createTheme({
    ...detectAppearance(process.env, stdout.isTTY ? stdout.getColorDepth() : 1),
    ...options.appearance,
  });
  const store = createScreenStore({
    session,
    words,
    keys,
    repeat: options.repeat ?? (() => undefined),
  });
  const giveBack = takeTerminal(stdout);
  const stopSignals = quitOnSignals(session);
  const stopKeys = listenToKeys(stdin, store.press);
  const surroundings = { words, theme, keys, profile, simulated };
  const instance = render(
    <App store={store} size={watchSize(stdout)} surroundings={surroundings} />,
    {
      stdout: inkOutput(stdout),
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
    instance.unmount();
    giveBack();
    stopSignals();
  }
};

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
