// Samples of a process over time, in equal parts of its life, and whether they stay flat.
import { quantile } from '../../benchmarks/shared/quantile.js';
import { textTable } from '../../benchmarks/shared/text-table.js';

export interface Sample {
  /** 0 at the beginning, 1 at the end. */
  readonly at: number;
  readonly resident: number;
  readonly handles: number;
  /** What a reading took in milliseconds: one or many. */
  readonly tookMs: readonly number[];
}

const parts = 6;
/** The first part is warming up: code is compiled and the heap finds its size. */
const settledFrom = 1;
const mostGrowth = 1.2;
// Of latency the quick readings are held against each other: what slows the others may be the rest of the machine.

export interface Finding {
  readonly table: string;
  /** Why it is not flat, or null. */
  readonly grows: string | null;
}

export const judgeSamples = (samples: readonly Sample[]): Finding => {
  const rows = Array.from({ length: parts }, (_, part) => {
    const own = samples.filter(({ at }) => Math.min(parts - 1, Math.floor(at * parts)) === part);
    const took = own.flatMap(({ tookMs }) => tookMs);
    return {
      resident: quantile(
        own.map(({ resident }) => resident),
        0.5,
      ),
      handles: Math.max(...own.map(({ handles }) => handles)),
      quick: quantile(took, 0.05),
      median: quantile(took, 0.5),
      late: quantile(took, 0.99),
    };
  });
  const table = textTable([
    ['part of the run', 'memory', 'handles', '5th', 'median', '99th'],
    ...rows.map(({ resident, handles, quick, median, late }, part) => [
      `${part + 1} of ${parts}`,
      `${(resident / 1e6).toFixed(0)} MB`,
      String(handles),
      `${quick.toFixed(3)} ms`,
      `${median.toFixed(3)} ms`,
      `${late.toFixed(3)} ms`,
    ]),
  ]);
  const [first, last] = [rows[settledFrom], rows.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('no samples');
  const grown = (['resident', 'handles', 'quick'] as const).filter(
    (what) => last[what] > mostGrowth * first[what],
  );
  const grows = grown.length === 0 ? null : `${grown.join(', ')} grew by more than a fifth`;
  return { table, grows };
};
