// A reading log as a source of inputs, at the pace it was made or as fast as it is read. Times are the log's
// own. Refuses a log with a bad line at that line: nothing of it is skipped.
import { cleanText } from '../core/clean-text.js';
import { type Input, inputTime } from '../core/inputs.js';
import { createLogParser } from '../core/reading-log.js';
import type { Clock, Feed } from '../session/ports.js';
import { readLines } from './read-lines.js';

export type Pace = 'real-time' | 'fast';

export interface LogFeedOptions {
  readonly file: string;
  readonly pace: Pace;
  readonly clock: Clock;
  /** Told of a log that cannot be read or has a bad line, in one line with file and line number. */
  readonly refused?: (says: string) => void;
}

const longestText = 200;
/** Other work gets its turn after so many lines. */
const linesAtATime = 500;

export const createLogFeed = ({ file, pace, clock, refused }: LogFeedOptions): Feed => {
  const name = cleanText(file, longestText);
  let stopped = false;
  let cancelWait = (): void => undefined;
  let running: Promise<void> = Promise.resolve();

  const waitFor = (seconds: number): Promise<void> =>
    new Promise((resolve) => {
      if (stopped) return resolve();
      const cancel = clock.after(seconds, resolve);
      cancelWait = () => {
        cancel();
        resolve();
      };
    });

  const run = async (take: (input: Input) => void): Promise<void> => {
    let t = 0;
    let count = 0;
    let startedAt: number | undefined;
    for await (const next of inputsOf(file)) {
      if ('refused' in next) {
        const says = cleanText(`${name}: ${next.refused}`, longestText);
        refused?.(says);
        if (!stopped) take({ kind: 'link', t, change: 'failed', detail: says });
        return;
      }
      count += 1;
      t = inputTime(next);
      if (startedAt === undefined) {
        startedAt = clock.now() - t;
        take({ kind: 'link', t, change: 'opened', detail: name });
      }
      const ahead = startedAt + t - clock.now();
      if (pace === 'real-time' && ahead > 0) await waitFor(ahead);
      else if (count % linesAtATime === 0) await waitFor(0);
      if (stopped) return;
      take(next);
    }
    take({ kind: 'link', t, change: 'ended' });
  };

  return {
    title: `reading log ${name}`,
    ownTime: true,
    start: (take) => {
      running = run(take);
    },
    stop: async () => {
      stopped = true;
      cancelWait();
      await running;
    },
  };
};

/** Every input of the log, or at the first bad line why it is refused. */
async function* inputsOf(file: string): AsyncGenerator<Input | { readonly refused: string }> {
  const parse = createLogParser();
  const lines = readLines(file);
  for (;;) {
    let input: Input;
    try {
      const line = await lines.next();
      if (line.done) return;
      input = parse(line.value);
    } catch (error) {
      await lines.return(undefined);
      yield { refused: readingProblem(error) };
      return;
    }
    yield input;
  }
}

const readingProblem = (error: unknown): string => {
  if (!(error instanceof Error)) return String(error);
  if (!('code' in error)) return error.message;
  switch (error.code) {
    case 'ENOENT':
      return 'no such file';
    case 'EISDIR':
      return 'is a folder, not a file';
    case 'EACCES':
      return 'may not be read';
    default:
      return error.message;
  }
};
