// The signals that ask a program to end: Ctrl-C, a plain kill, a terminal that is closed.

const endSignals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Calls once for each signal, with its number; the returned function stops that. */
export const onEndSignals = (call: (number: number) => void): (() => void) => {
  const heard = (_: NodeJS.Signals, number: number): void => call(number);
  for (const signal of endSignals) process.once(signal, heard);
  return () => {
    for (const signal of endSignals) process.removeListener(signal, heard);
  };
};

/** What a shell makes of a program that a signal ended. */
export const exitCodeOfSignal = (number: number): number => 128 + number;
