// A reading log from a file, input by input, without ever holding all of it.
import type { Input } from '../core/inputs.js';
import { createLogParser, LogError } from '../core/reading-log.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { problemOfLog } from './log-problem.js';

/** @throws FileError at the first line that is not sound. */
export function* readLog(path: string): Generator<Input, void> {
  const parse = createLogParser();
  for (const { buffer, from, to } of byteLines(path)) {
    let input: Input;
    try {
      input = parse(buffer.toString('utf8', from, to));
    } catch (error) {
      if (!(error instanceof LogError)) throw error;
      throw new FileError(path, [problemOfLog(error)]);
    }
    yield input;
  }
}
