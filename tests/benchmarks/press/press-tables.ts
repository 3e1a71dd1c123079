// The benchmark's tables as text.
import { pressFindings } from '../../../src/core/press/decide-press.js';
import type { Proportion } from '../shared/proportion.js';
import { textTable } from '../shared/text-table.js';
import type { PressScore } from './score-press.js';

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.01 ? 3 : 2)} %`;

/** A share with the upper end of its 95 % interval. */
const upTo = ({ share, high }: Proportion): string => `${percent(share)} (to ${percent(high)})`;

/** Rows are what is true, columns what was found. */
export const truthTable = (scores: readonly PressScore[]): string =>
  textTable([
    ['truth', ...pressFindings, 'trials', 'naive: loose', 'median cycles', 'median s'],
    ...scores.map(({ kind, found, falseAlarms, naiveLoose, medianCycles, medianS }) => [
      kind,
      ...pressFindings.map((finding) => String(found[finding])),
      String(falseAlarms.of),
      percent(naiveLoose.share),
      String(medianCycles),
      medianS.toFixed(1),
    ]),
  ]);

export const shareTable = (scores: readonly PressScore[]): string =>
  textTable([
    ['truth', 'right', 'false loose, cracked or bridged (95 % limit)'],
    ...scores.map(({ kind, right, falseAlarms }) => [
      kind,
      right === null ? '-' : percent(right.share),
      upTo(falseAlarms),
    ]),
  ]);

export const rateTable = (rows: readonly { name: string; falseAlarms: Proportion }[]): string =>
  textTable([
    ['a probe that slips', 'false alarms (95 % limit)'],
    ...rows.map(({ name, falseAlarms }) => [name, upTo(falseAlarms)]),
  ]);

/** The computed rates: `rows` of readings a second and the rate for one part. */
export const computedTable = (
  windowsAlone: number,
  rows: readonly { rate: number; falseAlarmRate: number }[],
): string =>
  textTable([
    ['computed false-alarm rate, one part', ''],
    ['windows alone, any order alike', percent(windowsAlone)],
    ...rows.map(({ rate, falseAlarmRate }) => [
      `with edges, ${rate} readings/s`,
      percent(falseAlarmRate),
    ]),
  ]);
