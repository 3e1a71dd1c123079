// The benchmark's outcome as a table for people: what was asked for, what the walk reached, and the plain
// rule on the same traces.
import { proportion } from '../shared/proportion.js';
import { textTable } from '../shared/text-table.js';
import type { PlainSetting } from './plain-rule.js';
import type { Finding } from './score-walk.js';
import type { Tally } from './tally.js';

export interface RateRow {
  readonly rate: number;
  readonly walk: Tally | null;
  readonly plain: Tally;
  readonly plainSetting: PlainSetting;
}

export interface Report {
  readonly mixture: string;
  readonly says: string;
  readonly seed: number;
  readonly engine: string;
  /** Pins generated; a tally counts those reached before the first departure. */
  readonly pins: number;
  readonly walks: number;
  readonly walk: Tally | null;
  readonly plain: Tally;
  readonly plainSetting: PlainSetting;
  readonly rates: readonly RateRow[];
  readonly findings: readonly (Finding & { readonly walk: string; readonly rate: number })[];
}

type Counted = 'wrong' | 'misnamed' | 'advancedTwice' | 'missed' | 'wrongVerdict' | 'unsure';

const goals: readonly (readonly [name: string, key: Counted, atMost: number | null])[] = [
  ['wrong captures (over 2 %)', 'wrong', 0.0002],
  ['misnamed pins', 'misnamed', 0.0005],
  ['  of them advanced twice', 'advancedTwice', null],
  ['missed pins', 'missed', 0.003],
  ['verdict wrong', 'wrongVerdict', 0.001],
  ['verdict unsure', 'unsure', 0.02],
];

const percent = (share: number): string => `${(share * 100).toFixed(share < 0.001 ? 3 : 2)} %`;
const seconds = (value: number | null): string => (value === null ? '-' : `${value.toFixed(2)} s`);
const named = ({ readings, percent: within }: PlainSetting): string => `${readings} in ${within} %`;

const shareOf = (tally: Tally | null, key: Counted): string =>
  tally === null || tally.pins === 0 ? '-' : percent(tally[key] / tally.pins);

const counted = (tally: Tally | null, key: Counted): string =>
  tally === null || tally.pins === 0
    ? '-'
    : `${shareOf(tally, key)} (${tally[key]}, up to ${percent(proportion(tally[key], tally.pins).high)})`;

const summary = (report: Report): string =>
  textTable([
    ['', 'asked for', 'walk (count, 95 % bound)', `plain rule, ${named(report.plainSetting)}`],
    ...goals.map(([name, key, atMost]) => [
      name,
      atMost === null ? '' : `<= ${percent(atMost)}`,
      counted(report.walk, key),
      counted(report.plain, key),
    ]),
    [
      'settled to captured, median',
      '<= 0.75 s',
      seconds(report.walk?.medianS ?? null),
      seconds(report.plain.medianS),
    ],
    [
      'settled to captured, 95th',
      '',
      seconds(report.walk?.p95S ?? null),
      seconds(report.plain.p95S),
    ],
    [
      'settled to last reading used',
      '',
      ...[report.walk, report.plain].map((t) =>
        t === null ? '-' : `${seconds(t.readMedianS)}, 95th ${seconds(t.readP95S)}`,
      ),
    ],
    [
      'walks out of step',
      '',
      ...[report.walk, report.plain].map((t) =>
        t === null ? '-' : `${t.outOfStep} of ${t.walks}`,
      ),
    ],
    [
      'pins reached',
      '',
      ...[report.walk, report.plain].map((t) => (t === null ? '-' : String(t.pins))),
    ],
  ]);

const perRate = (report: Report): string =>
  textTable([
    [
      'readings/s',
      'pins',
      'wrong',
      'misnamed',
      'missed',
      'verdict',
      'unsure',
      'median',
      '95th',
      '| plain',
      'wrong',
      'misnamed',
      'missed',
      'median',
    ],
    ...report.rates.map(({ rate, walk, plain, plainSetting }) => [
      String(rate),
      String(walk?.pins ?? '-'),
      shareOf(walk, 'wrong'),
      shareOf(walk, 'misnamed'),
      shareOf(walk, 'missed'),
      shareOf(walk, 'wrongVerdict'),
      shareOf(walk, 'unsure'),
      seconds(walk?.medianS ?? null),
      seconds(walk?.p95S ?? null),
      `| ${named(plainSetting)}`,
      shareOf(plain, 'wrong'),
      shareOf(plain, 'misnamed'),
      shareOf(plain, 'missed'),
      seconds(plain.medianS),
    ]),
  ]);

export const reportTable = (report: Report): string =>
  [
    `Mixture ${report.mixture}: ${report.says}.`,
    `${report.walks} walks, ${report.pins} pins, seed ${report.seed}; the walk is ${report.engine}.`,
    'Shares are of pins up to the first departure in a walk, its echoes left out.',
    '',
    summary(report),
    '',
    'For each meter rate, with the plain rule at its best for that rate:',
    perRate(report),
    '',
  ].join('\n');

/** One line a finding, kinds together, for looking into with `--only` and `--dump`. */
export const findingList = ({ findings }: Report): string =>
  [...findings]
    .sort((a, b) => a.fault.localeCompare(b.fault))
    .map(
      ({ fault, walk, rate, index, t, says }) =>
        `${fault}  ${walk}  ${rate}/s  pin ${index + 1}  t ${t}  ${says}\n`,
    )
    .join('');
