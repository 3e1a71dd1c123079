// Takes the terminal over and gives it back whatever happens: at the end, on a signal, on a crash. Entering is
// by hand, for Ink 6 has no alternate screen of its own.

export interface TerminalOutput {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** Alternate screen, cleared, cursor at its top; pasted text is marked as such. */
const enter = '\u001b[?1049h\u001b[2J\u001b[H\u001b[?2004h';
/** Marked pasting off, cursor shown, styles off, the old screen back. */
const leave = '\u001b[?2004l\u001b[?25h\u001b[0m\u001b[?1049l';

/** Returns what gives the terminal back; calling it again does nothing. */
export const takeTerminal = (output: TerminalOutput): (() => void) => {
  if (output.isTTY !== true) return () => undefined;
  let taken = true;
  const giveBack = (): void => {
    if (!taken) return;
    taken = false;
    process.off('exit', giveBack);
    process.off('uncaughtExceptionMonitor', giveBack);
    output.write(leave);
  };
  process.on('exit', giveBack);
  // Before the error is printed, so that it is printed where it can be read.
  process.on('uncaughtExceptionMonitor', giveBack);
  output.write(enter);
  return giveBack;
};

/** Erasing the scrollback is none of a screen's business; Ink does it when a frame is taller than the terminal. */
const eraseScrollback = '\u001b[3J';

const withoutScrollbackErase = (text: string): string => text.replaceAll(eraseScrollback, '');

/** As much of a stream as tells that its terminal has gone away. */
interface Watched {
  on(event: 'error' | 'end', call: () => void): unknown;
}

/**
 * Calls `gone` once when the terminal goes away, by whichever end shows it first. The listeners stay for good:
 * whoever reads or writes there later must not bring the program down either.
 */
export const watchTerminal = (input: Watched, output: Watched, gone: () => void): void => {
  let told = false;
  const tell = (): void => {
    if (told) return;
    told = true;
    // The same terminal, as a rule: last words must not fail where nobody can read them.
    process.stderr.on('error', () => undefined);
    gone();
  };
  input.on('error', tell);
  input.on('end', tell);
  output.on('error', tell);
};

export interface InkTerminal {
  readonly output: NodeJS.WriteStream;
  /** From now on nothing more is written. */
  close(): void;
}

/** A terminal as Ink may use it. `fill` puts in what Ink's frames have only a place for. */
export const inkTerminal = (
  output: NodeJS.WriteStream,
  fill: (frame: string) => string,
): InkTerminal => {
  let open = true;
  const proxy = new Proxy(output, {
    get(target, name) {
      if (name === 'write') {
        return (text: string | Uint8Array) =>
          open &&
          target.write(typeof text === 'string' ? fill(withoutScrollbackErase(text)) : text);
      }
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
  return {
    output: proxy,
    close() {
      open = false;
    },
  };
};
