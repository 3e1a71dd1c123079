// Questions at a real terminal, one line each. Lines typed ahead wait for their question.
import { createInterface } from 'node:readline';
import { showUnsafe } from '../core/clean-text.js';
import { english } from '../core/words/english.js';
import { exitCodeOfSignal, onEndSignals } from '../session/end-signals.js';
import { inColumns } from './in-columns.js';
import { sayLine } from './say.js';
import { exitCodes, UserError } from './user-error.js';

export interface Asking {
  /** The answer, without blanks around it. @throws UserError when the terminal closes or a signal ends the program. */
  ask(question: string): Promise<string>;
  say(line: string): void;
}

export const askAtTerminal = async <T>(talk: (asking: Asking) => Promise<T>): Promise<T> => {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const ahead: string[] = [];
  let take: ((line: string) => void) | null = null;
  lines.on('line', (line) => {
    if (take === null) ahead.push(line);
    else take(line);
  });
  const closed = new Promise<never>((_resolve, reject) => {
    lines.once('close', () => reject(new UserError(english.refusals.leftEarly, exitCodes.usage)));
  });
  closed.catch(() => undefined);
  // The terminal is given back before the program goes.
  const stopSignals = onEndSignals((number) => {
    process.exitCode = exitCodeOfSignal(number);
    lines.close();
  });
  const nextLine = (question: string): Promise<string> => {
    lines.setPrompt(showUnsafe(question));
    lines.prompt();
    const first = ahead.shift();
    if (first !== undefined) return Promise.resolve(first);
    return new Promise((resolve) => {
      take = (line) => {
        take = null;
        resolve(line);
      };
    });
  };
  try {
    return await talk({
      ask: async (question) => (await Promise.race([nextLine(question), closed])).trim(),
      say: (line) => inColumns(line, process.stdout.columns).forEach(sayLine),
    });
  } finally {
    stopSignals();
    lines.close();
  }
};
