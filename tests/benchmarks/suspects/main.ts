// The suspects benchmark: how many probes it takes to isolate a fault, as proposed, in order, and at the least; then
// the same on the demo board with probes that mislead. Ends with 1 where the proposal is worse than probing in order,
// or where a command was heard that nobody gave.
// Last the reply pads: commands heard that nobody gave, over walks with leaky lines. Options: --boards N a family (40),
// --trials N on the demo board (60, 0 leaves it out), --walks N with pads (4000, 0 leaves them out), --seed TEXT.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { readProfile } from '../../support/read-profile.js';
import { proportion } from '../shared/proportion.js';
import { textTable } from '../shared/text-table.js';
import { compareRules, type RuleCosts, type Unit } from './compare-rules.js';
import { demoRules, tryDemo } from './demo-trials.js';
import { walkWithPads } from './pad-walks.js';
import { families } from './small-chains.js';

const { values } = parseArgs({
  options: {
    boards: { type: 'string', default: '40' },
    trials: { type: 'string', default: '60' },
    walks: { type: 'string', default: '4000' },
    seed: { type: 'string', default: 'suspects' },
  },
});

const wholeNumber = (name: 'boards' | 'trials' | 'walks', least: number): number => {
  const count = Number(values[name]);
  if (Number.isInteger(count) && count >= least) return count;
  process.stderr.write(`--${name} must be a whole number from ${least}, not ${values[name]}\n`);
  process.exit(2);
};

const say = (text: string): void => void process.stdout.write(`${text}\n\n`);
const boards = wholeNumber('boards', 1);
const trials = wholeNumber('trials', 0);
const walks = wholeNumber('walks', 0);
const { content: demo } = readProfile(readFileSync('profiles/demo.json', 'utf8'));
if (demo === undefined || demo === null) throw new Error('the demo profile does not read');

const overall = (rows: readonly RuleCosts[], one: 'inOrder' | 'proposed' | 'optimum'): number =>
  rows.reduce((sum, row) => sum + row[one], 0) / rows.length;

const costTable = (unit: Unit): readonly RuleCosts[] => {
  const rows = families.map((family) => compareRules(family, { boards, seed: values.seed, unit }));
  say(
    textTable([
      [
        `mean ${unit} to isolate`,
        'in order',
        'skipping',
        'proposed',
        'optimum',
        'over optimum',
        'given up',
      ],
      ...rows.map((row) => [
        row.family,
        ...[row.inOrder, row.inOrderSkipping, row.proposed, row.optimum].map((cost) =>
          cost.toFixed(2),
        ),
        `${(100 * (row.proposed / row.optimum - 1)).toFixed(1)} %`,
        `${(100 * row.givenUp).toFixed(2)} %`,
      ]),
      [
        'all families',
        overall(rows, 'inOrder').toFixed(2),
        (rows.reduce((sum, row) => sum + row.inOrderSkipping, 0) / rows.length).toFixed(2),
        overall(rows, 'proposed').toFixed(2),
        overall(rows, 'optimum').toFixed(2),
        `${(100 * (overall(rows, 'proposed') / overall(rows, 'optimum') - 1)).toFixed(1)} %`,
        '',
      ],
    ]),
  );
  return rows;
};

const tables = [costTable('probes'), costTable('effort')];

if (trials > 0) {
  say(
    textTable([
      [
        `demo board, ${trials} faults, probes that mislead`,
        'mean probes',
        'mean effort',
        'truth first',
        'among three',
      ],
      ...demoRules.map((rule) => {
        const { probes, effort, first, amongThree } = tryDemo(demo, rule, trials, values.seed);
        const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
        return [rule, probes.toFixed(2), effort.toFixed(2), percent(first), percent(amongThree)];
      }),
    ]),
  );
}

let falseCommands = 0;
if (walks > 0) {
  const rows = (['random', 'like-pads'] as const).flatMap((leaky) =>
    [2.5, 5, 10, 20].map((rate) => {
      const found = walkWithPads(demo, { walks, periodS: 1 / rate, leaky, seed: values.seed });
      if (leaky === 'random') falseCommands += found.falseCommands;
      return [
        leaky === 'random' ? 'of any value' : 'like a pad each',
        String(rate),
        String(found.leakyLines),
        `${found.falseCommands} (to ${(100 * proportion(found.falseCommands, found.leakyLines).high).toFixed(3)} %)`,
        String(found.falseEchoes),
        `${((100 * found.heard) / found.meant).toFixed(1)} %`,
      ];
    }),
  );
  say(
    textTable([
      [
        'leaky lines',
        'readings/s',
        'lines',
        'false commands (95 % limit a line)',
        'taken back',
        'meant and heard',
      ],
      ...rows,
    ]),
  );
}

const isWorse = tables.some((rows) => overall(rows, 'proposed') > overall(rows, 'inOrder'));
say(
  isWorse
    ? 'proposing is worse than probing in order'
    : 'proposing is better than probing in order',
);
say(falseCommands === 0 ? 'no false command' : `${falseCommands} false commands`);
process.exitCode = isWorse || falseCommands > 0 ? 1 : 0;
