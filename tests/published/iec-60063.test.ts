// IEC 60063:2015, preferred numbers: values read in public copies of the tables, unless a test says memory.
import { expect, it } from 'vitest';
import { nominalTolerance, preferredValues } from '../../src/core/numbers/preferred-values.js';
import e96 from '../fixtures/published/e96.json' with { type: 'json' };

const twoDigits = (series: 'E3' | 'E6' | 'E12' | 'E24') =>
  preferredValues(series).map((value) => value / 10);

it('E3, E6, E12 and E24 are the tabled values', () => {
  expect(twoDigits('E3')).toEqual([10, 22, 47]);
  expect(twoDigits('E6')).toEqual([10, 15, 22, 33, 47, 68]);
  expect(twoDigits('E12')).toEqual([10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82]);
  expect(twoDigits('E24')).toEqual([
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
  ]);
});

it('E24 is not the rounded geometric series (calculated)', () => {
  const rule = Array.from({ length: 24 }, (_, i) => Math.round(10 * 10 ** (i / 24)));
  const differing = twoDigits('E24').filter((value, i) => value !== rule[i]);
  expect(differing).toEqual([27, 30, 33, 36, 39, 43, 47, 82]);
});

it('E96 is the tabled decade, and E48 every other value of it', () => {
  expect(preferredValues('E96')).toEqual(e96.values);
  expect(preferredValues('E48')).toEqual(e96.values.filter((_, i) => i % 2 === 0));
});

it('E192 has 920 where the rule gives 919 (from memory, recomputed)', () => {
  const rule = Array.from({ length: 192 }, (_, i) => Math.round(100 * 10 ** (i / 192)));
  const e192 = preferredValues('E192');
  expect(e192).toHaveLength(192);
  expect(e192.filter((value, i) => value !== rule[i])).toEqual([920]);
  expect(rule).toContain(919);
  expect(e192.filter((_, i) => i % 2 === 0)).toEqual(e96.values);
});

it('the series are meant for tolerances of 20, 10, 5, 2 and 1 %', () => {
  expect(nominalTolerance).toEqual({ E6: 0.2, E12: 0.1, E24: 0.05, E48: 0.02, E96: 0.01 });
});
