// What tells a session from every other however long it grows: the chain value after its first line.
import { type ChainValue, chainStart } from '../core/session-chain.js';
import { byteLines } from './byte-lines.js';
import { chainStep } from './chain-step.js';

/** @throws FileError when the file cannot be read. Undefined for an empty one. */
export const sessionBegins = (path: string): ChainValue | undefined => {
  for (const { buffer, from, to } of byteLines(path)) {
    return chainStep(chainStart, buffer, from, to);
  }
  return undefined;
};
