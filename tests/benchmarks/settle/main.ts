// `npm run bench:settle`: how well the walk settles and stays aligned, beside the plain rule people use.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Engine, inProcessEngine } from './engine.js';
import { type BenchOptions, benchOptions, usage } from './options.js';
import { programEngine } from './program-engine.js';
import { findingList, reportTable } from './report-table.js';
import { runMixture } from './run-mixture.js';

const chosen = ({ engine }: BenchOptions): Engine | null => {
  if (engine === 'none') return null;
  if (engine === 'in-process') return inProcessEngine;
  if (existsSync(fileURLToPath(new URL('../../../dist/main.js', import.meta.url))))
    return programEngine;
  throw new RangeError('dist/main.js is not there; run npm run build first');
};

const bench = async (args: readonly string[]): Promise<void> => {
  const options = benchOptions(args);
  if (options === null) {
    process.stdout.write(usage);
    return;
  }
  const engine = chosen(options);
  for (const mixture of options.mixtures) {
    const report = await runMixture(mixture, options, engine);
    if (options.list) process.stdout.write(findingList(report));
    process.stdout.write(`${options.json ? JSON.stringify(report) : reportTable(report)}\n`);
  }
};

try {
  await bench(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof RangeError || error instanceof TypeError)) throw error;
  process.stderr.write(`bench:settle: ${error.message}\n`);
  process.exitCode = 2;
}
