// Promises the three numbers that every tolerance factor asks for. Refuses fewer than two boards.
import { requireProbability } from './require-probability.js';

/** @throws RangeError unless n is whole and 2 or more, and both shares lie strictly between 0 and 1. */
export function requireToleranceDesign(n: number, share: number, confidence: number): void {
  if (!Number.isInteger(n) || n < 2) {
    throw new RangeError(`a tolerance interval needs two or more values, got ${n}`);
  }
  requireProbability(share, 'the share to be covered');
  requireProbability(confidence, 'the confidence');
}
