// Promises the preferred numbers of IEC 60063, exactly as tabled. E24 and coarser are tables, because they
// are not the rounded geometric series; the finer ones follow the rule but for one value.

export const eSeriesNames = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'] as const;
export type ESeries = (typeof eSeriesNames)[number];

const e24 = [
  100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300, 330, 360, 390, 430, 470, 510, 560,
  620, 680, 750, 820, 910,
];
const everyNth = (n: number) => e24.filter((_, place) => place % n === 0);

/** round(100 * 10^(i/N)); IEC 60063 has 920 in E192 where the rule gives 919. */
const byRule = (count: number) =>
  Array.from({ length: count }, (_, i) => Math.round(100 * 10 ** (i / count))).map((value) =>
    value === 919 ? 920 : value,
  );

const decades: Readonly<Record<ESeries, readonly number[]>> = {
  E3: everyNth(8),
  E6: everyNth(4),
  E12: everyNth(2),
  E24: e24,
  E48: byRule(48),
  E96: byRule(96),
  E192: byRule(192),
};

/** The tolerance that each series is meant for, as a fraction. */
export const nominalTolerance = { E6: 0.2, E12: 0.1, E24: 0.05, E48: 0.02, E96: 0.01 } as const;

/**
 * One decade of a series in rising order, as three-digit whole numbers from 100.
 *
 * @example preferredValues('E6'); // [100, 150, 220, 330, 470, 680]
 */
export function preferredValues(series: ESeries): readonly number[] {
  return decades[series];
}
