// A trainee's results, one a line, in the data folder.
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type DrillResult, readResult } from '../core/drill/drill-result.js';
import { byteLines } from './byte-lines.js';
import { dataFolder } from './data-folder.js';
import { FileError } from './file-error.js';

export const drillResultsPath = (): string => join(dataFolder(), 'drill-results.jsonl');

/** Earlier results of one drill, oldest first. Lines that are none are passed over. @throws FileError */
export const earlierResults = (drill: string, path = drillResultsPath()): DrillResult[] => {
  if (!existsSync(path)) return [];
  const found: DrillResult[] = [];
  for (const { buffer, from, to } of byteLines(path)) {
    const result = readResult(buffer.toString('utf8', from, to));
    if (result?.drill === drill) found.push(result);
  }
  return found;
};

/** @throws FileError when it cannot be written. */
export const keepResult = (result: DrillResult, path = drillResultsPath()): void => {
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    // What a lost program left unfinished must not take the next result with it.
    const begin = existsSync(path) && !readFileSync(path, 'utf8').endsWith('\n') ? '\n' : '';
    appendFileSync(path, `${begin}${JSON.stringify(result)}\n`, { mode: 0o600 });
  } catch (error) {
    const what = `the result could not be kept: ${error instanceof Error ? error.message : String(error)}`;
    throw new FileError(path, [{ path: [], what, fix: 'make room there, or let it be written' }]);
  }
};
