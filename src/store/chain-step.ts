// One step along a session's hash chain, by the platform's SHA-256. Works in one buffer of its own and passes
// values as hex: an array of bytes for every line costs more than the hashing.
import { hash } from 'node:crypto';
import type { ChainStep } from '../core/session-chain.js';

const valueBytes = 32;
let joined = Buffer.alloc(64 * 1024);

export const chainStep: ChainStep = (before, bytes, from = 0, to = bytes.length) => {
  const length = valueBytes + to - from;
  if (length > joined.length) joined = Buffer.alloc(2 * length);
  joined.write(before, 0, valueBytes, 'hex');
  joined.set(from === 0 && to === bytes.length ? bytes : bytes.subarray(from, to), valueBytes);
  return hash('sha256', joined.subarray(0, length), 'hex');
};
