// The benchmark of the reply pads: whole walks on the virtual bench with leaky lines. Prints each row as it is done, then
// the table, and ends with 1 where a command was carried out that nobody gave.
// Options: --walks N a row (250), --seed TEXT.
import { parseArgs } from 'node:util';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';
import { proportion } from '../shared/proportion.js';
import { textTable } from '../shared/text-table.js';
import { type LeakyWalks, tallyLeaky } from './leaky-walks.js';

const { values } = parseArgs({
  options: {
    walks: { type: 'string', default: '250' },
    seed: { type: 'string', default: 'pads' },
  },
});
const walks = Number(values.walks);
if (!Number.isInteger(walks) || walks < 1) {
  process.stderr.write(`--walks must be a whole number from 1, not ${values.walks}\n`);
  process.exit(2);
}

const rates = [2.5, 5, 10, 20];
const rows: readonly Omit<LeakyWalks, 'walks' | 'seed'>[] = [
  ...rates.map(
    (rate) => ({ answers: 'ground-taps', leaks: 'random', rate, listens: true }) as const,
  ),
  ...rates.map((rate) => ({ answers: 'pads', leaks: 'random', rate, listens: true }) as const),
  ...rates.map(
    (rate) => ({ answers: 'ground-taps', leaks: 'like-pads', rate, listens: true }) as const,
  ),
  ...rates.map(
    (rate) => ({ answers: 'ground-taps', leaks: 'random', rate, listens: false }) as const,
  ),
  ...rates.map(
    (rate) => ({ answers: 'ground-taps', leaks: 'like-pads', rate, listens: false }) as const,
  ),
];

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');
const table = [
  [
    'answers by, leaks, readings/s',
    'walks',
    'leaky lines',
    'false echoes',
    'false commands',
    'at most (95 %)',
    'given',
    'misnamed',
    'pads read as pins',
    'pads off',
    'unfinished',
  ],
];
let wrong = 0;
for (const row of rows) {
  const found = tallyLeaky(profile, driver, { ...row, walks, seed: values.seed });
  if (row.leaks === 'random') wrong += found.falseCommands;
  table.push([
    `${row.listens ? row.answers : 'nobody listens'}, ${row.leaks}, ${row.rate}`,
    ...[found.walks, found.leakyLines, found.falseEchoes, found.falseCommands].map(String),
    `${(100 * proportion(Math.min(found.falseCommands, found.leakyLines), found.leakyLines).high).toFixed(2)} %`,
    ...[found.given, found.misnamed, found.padsRead, found.shadowed, found.unfinished].map(String),
  ]);
  process.stderr.write(`${table.at(-1)?.join('  ')}\n`);
}
process.stdout.write(`\n${textTable(table)}\n`);
process.exitCode = wrong === 0 ? 0 : 1;
