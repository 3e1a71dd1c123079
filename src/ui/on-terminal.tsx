// Draws on a terminal and takes its keys until something has ended, then gives it back as it was.
import { render } from 'ink';
import type { ReactNode } from 'react';
import { listenToKeys } from './keys/keyboard.js';
import type { Key } from './keys/parse-keys.js';
import { createStandIns, StandInsContext } from './live/stand-ins.js';
import { inkTerminal, takeTerminal, watchTerminal } from './terminal.js';

export interface OnTerminal {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly press: (key: Key) => void;
  /** The terminal has gone away. */
  readonly gone: () => void;
  readonly ended: Promise<unknown>;
}

export const showOnTerminal = async (
  screen: ReactNode,
  { stdin, stdout, press, gone, ended }: OnTerminal,
): Promise<void> => {
  const giveBack = takeTerminal(stdout);
  const stopKeys = listenToKeys(stdin, press);
  const standIns = createStandIns();
  const terminal = inkTerminal(stdout, standIns.fill);
  watchTerminal(stdin, stdout, () => {
    terminal.close();
    gone();
  });
  const filled = <StandInsContext.Provider value={standIns}>{screen}</StandInsContext.Provider>;
  const instance = render(filled, {
    stdout: terminal.output,
    exitOnCtrlC: false,
    patchConsole: false,
    incrementalRendering: false,
    isScreenReaderEnabled: false,
    // Twice the rate of the store: an equal one would beat with it.
    maxFps: 30,
  });
  try {
    await ended;
  } finally {
    stopKeys();
    // Ink writes its last frame once more when it goes; the screen it belongs to is left at once.
    terminal.close();
    instance.unmount();
    giveBack();
  }
};
