// The benchmark of a donor walked beside the patient: whole walks on the virtual bench. Prints each row as it is done,
// then the table. Options: --walks N a row (20), --only TEXT for the rows with that in their name.
import { parseArgs } from 'node:util';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';
import { proportion } from '../shared/proportion.js';
import { textTable } from '../shared/text-table.js';
import { tallyDonor } from './donor-walks.js';

const { values } = parseArgs({
  options: { walks: { type: 'string', default: '20' }, only: { type: 'string', default: '' } },
});
const walks = Number(values.walks);
if (!Number.isInteger(walks) || walks < 1) {
  process.stderr.write(`--walks must be a whole number from 1, not ${values.walks}\n`);
  process.exit(2);
}

const rows = [true, false].flatMap((beside) =>
  [false, true].flatMap((known) =>
    [true, false].flatMap((hears) =>
      [5, 20].map((rate) => ({
        name: `${beside ? 'donor beside' : 'one board'}, ${known ? 'known' : 'blank'}, ${hears ? 'heard' : 'unheard'}, ${rate}/s`,
        asked: { beside, known, hears, rate, walks },
      })),
    ),
  ),
);

const profile = shippedProfile('demo');
const driver = shippedDriver('stream-fields-flags');
const table = [
  [
    'walk',
    'walks',
    'unfinished',
    'told',
    'misnamed',
    'at most (95 %)',
    'left wrong',
    'asked a walk',
    'renamed',
    'seconds a walk',
  ],
];
for (const { name, asked } of rows.filter((row) => row.name.includes(values.only))) {
  const found = tallyDonor(profile, driver, asked);
  const most = proportion(found.misnamed, Math.max(1, found.told)).high;
  table.push([
    name,
    ...[found.walks, found.unfinished, found.told, found.misnamed].map(String),
    `${(100 * most).toFixed(2)} %`,
    String(found.leftWrong),
    (found.questions / found.walks).toFixed(1),
    String(found.renamed),
    (found.seconds / found.walks).toFixed(0),
  ]);
  process.stderr.write(`${table.at(-1)?.join('  ')}\n`);
}
process.stdout.write(`\n${textTable(table)}\n`);
