// The signals that ask a program to end: Ctrl-C, a plain kill, a terminal that is closed.

const endSignals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Calls once for each signal; the returned function stops that. */
export const onEndSignals = (call: () => void): (() => void) => {
  for (const signal of endSignals) process.once(signal, call);
  return () => {
    for (const signal of endSignals) process.removeListener(signal, call);
  };
};
