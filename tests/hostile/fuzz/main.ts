// `npm run fuzz [-- --cases 1000000 --seed 1 --only NAME]`: every target for so many cases; ends with 1 at the first
// case that does not hold, with the seed that brings it back.
import { parseArgs } from 'node:util';
import { runTarget } from './run-target.js';
import { targets } from './targets.js';

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
  },
});

for (const target of targets) {
  if (values.only !== undefined && target.name !== values.only) continue;
  const { cases, tookS, slowestMs, heapBytes, failure } = runTarget(
    target,
    Number(values.cases),
    Number(values.seed),
  );
  process.stdout.write(
    `${target.name}: ${cases} cases from seed ${values.seed} in ${tookS.toFixed(0)} s, slowest thousand ${slowestMs.toFixed(2)} ms a case, heap at the end ${(heapBytes / 1e6).toFixed(0)} MB${failure === null ? '' : `\nFAILED: ${failure.slice(0, 4000)}`}\n`,
  );
  if (failure !== null) process.exitCode = 1;
}
