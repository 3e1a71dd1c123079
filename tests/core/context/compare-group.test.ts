import { describe, expect, it } from 'vitest';
import {
  compareGroup,
  type GroupMember,
  pooledSpread,
} from '../../../src/core/context/compare-group.js';

const members = (...values: (number | [value: number, nominal: number])[]): GroupMember[] =>
  values.map((given, at) => {
    const [value, nominal] = Array.isArray(given) ? given : [given, null];
    return { line: `L${at}`, value, nominal, standardUncertainty: 0.003 * value };
  });

const apartOf = (group: readonly GroupMember[], others: readonly GroupMember[][] = []): string[] =>
  compareGroup(group, pooledSpread([group, ...others]))
    .members.filter(({ stands }) => stands === 'apart')
    .map(({ line }) => line);

describe('compareGroup', () => {
  it('should set the one line of eight apart that reads differently', () => {
    const group = members(388, 392, 386, 389, 391, 387, 390, 352);
    expect(compareGroup(group).method).toBe('modified-z');
    expect(apartOf(group)).toEqual(['L7']);
    expect(compareGroup(group).members[7]?.difference).toBeCloseTo(
      352 / Math.sqrt(388 * 389) - 1,
      9,
    );
  });

  it('should set the one line of three apart', () => {
    const group = members(388, 392, 352);
    expect(compareGroup(group).method).toBe('pooled-scale');
    expect(apartOf(group)).toEqual(['L2']);
  });

  it('should set nobody apart by less than alike lines may differ, however steady the rest', () => {
    expect(apartOf(members(388, 388, 388, 388, 388, 388, 396))).toEqual([]);
    expect(apartOf(members(388, 388, 396))).toEqual([]);
  });

  it('should set nobody apart by what measuring explains', () => {
    const rough = members(388, 390, 389, 391, 388, 389, 410).map((member) => ({
      ...member,
      standardUncertainty: 12,
    }));
    expect(apartOf(rough)).toEqual([]);
  });

  it('should compare with what is expected of each line', () => {
    const control = members([9650, 9650], [3920, 3920], [47000, 47000], [4680, 4680], [4500, 5600]);
    expect(apartOf(control)).toEqual(['L4']);
    expect(compareGroup(control).members[4]?.difference).toBeCloseTo(4500 / 5600 - 1, 9);
  });

  it('should see no common value in lines that need not agree', () => {
    const control = members(9650, 3920, 47000, 4680);
    expect(compareGroup(control)).toMatchObject({ method: 'no-common-value' });
    expect(compareGroup(control).members.every(({ stands }) => stands === 'unclear')).toBe(true);
  });

  it('should not say which of two clusters is right', () => {
    expect(compareGroup(members(388, 390, 300, 301)).method).toBe('no-common-value');
  });

  it('should not learn its scatter from groups whose lines need not agree', () => {
    const group = members(388, 392, 352);
    expect(apartOf(group, [members(9650, 3920, 47000, 4680, 120)])).toEqual(['L2']);
  });

  it('should learn its scatter from groups that have one', () => {
    const restless = members(1000, 1028, 972, 1027, 973, 1029, 971, 1028, 974);
    expect(apartOf(members(388, 392, 365))).toEqual(['L2']);
    expect(apartOf(members(388, 392, 365), [restless])).toEqual([]);
  });

  it('should leave a pair unclear and take an empty group for none', () => {
    expect(compareGroup(members(388, 300)).members.map(({ stands }) => stands)).toEqual([
      'unclear',
      'unclear',
    ]);
    expect(compareGroup([])).toEqual({ method: 'too-few', members: [] });
  });

  it('should refuse values that have no ratio', () => {
    expect(() => compareGroup(members(0, 1, 2))).toThrow(
      'line L0: a group compares values above 0',
    );
  });
});
