// Signals that end a program close what it is doing first. The handlers stay while they do: Ink ends the program at
// once where it finds itself the only one who listens.

const signals = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 } as const;

/** The first signal calls `quit`; a second one does not wait for that. Returns what stops listening. */
export const quitOnSignals = (quit: () => void): (() => void) => {
  const handlers = Object.entries(signals).map(([signal, number]) => {
    let again = false;
    const handle = (): void => {
      process.exitCode = 128 + number;
      if (again) process.exit();
      again = true;
      quit();
    };
    process.on(signal, handle);
    return () => process.off(signal, handle);
  });
  return () => {
    for (const stop of handlers) stop();
  };
};
