// Runs one target for so many cases, in batches with seeds of their own, and says what it took.
import fc from 'fast-check';
import type { Target } from './targets.js';

export interface Fuzzed {
  readonly cases: number;
  readonly tookS: number;
  /** The slowest batch, milliseconds a case. */
  readonly slowestMs: number;
  /** At the end; of what is held, where the runner may collect the rest (`--expose-gc`). */
  readonly heapBytes: number;
  /** The first failure, with the seed that brings it back; null where all held. */
  readonly failure: string | null;
}

const batch = 1000;

const heapHeld = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed;
};

export const runTarget = ({ property }: Target, cases: number, seed: number): Fuzzed => {
  const begin = performance.now();
  let slowestMs = 0;
  for (let done = 0; done < cases; done += batch) {
    const from = performance.now();
    const result = fc.check(property, {
      seed: seed + done / batch,
      numRuns: Math.min(batch, cases - done),
    });
    slowestMs = Math.max(slowestMs, (performance.now() - from) / batch);
    if (!result.failed) continue;
    const { counterexample, errorInstance, seed: its, counterexamplePath } = result;
    const why =
      errorInstance instanceof Error
        ? (errorInstance.stack ?? errorInstance.message)
        : String(errorInstance);
    const failure = `seed ${its}, path ${counterexamplePath?.slice(0, 60)}: ${fc.stringify(counterexample).slice(0, 1500)}\n${why}`;
    return {
      cases: done + batch,
      tookS: (performance.now() - begin) / 1000,
      slowestMs,
      heapBytes: heapHeld(),
      failure,
    };
  }
  return {
    cases,
    tookS: (performance.now() - begin) / 1000,
    slowestMs,
    heapBytes: heapHeld(),
    failure: null,
  };
};
