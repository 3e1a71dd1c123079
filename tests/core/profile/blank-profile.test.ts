import { describe, expect, it } from 'vitest';
import { isError } from '../../../src/core/problems.js';
import { type BlankWish, blankProfile, pinList } from '../../../src/core/profile/blank-profile.js';
import { readProfile } from '../../support/read-profile.js';

const wish = (more: Partial<BlankWish> = {}): BlankWish => ({
  id: 'j1',
  title: 'J1',
  pins: 6,
  rows: 2,
  numbering: 'row-wise',
  grounds: [],
  supplies: [],
  unused: [],
  names: [],
  function: 'resistance',
  polarity: 'red-walks',
  by: 'a test',
  date: '2026-01-31',
  ...more,
});
const order = (more: Partial<BlankWish>): string[] =>
  blankProfile(wish(more)).connector.pins.map(({ pin, row }) => `${pin}/${row ?? '-'}`);

describe('a blank profile', () => {
  it.each<[Partial<BlankWish>, string]>([
    [{ rows: 1 }, '1/- 2/- 3/- 4/- 5/- 6/-'],
    [{}, '1/1 2/1 3/1 4/2 5/2 6/2'],
    [{ numbering: 'odd-even' }, '1/1 3/1 5/1 2/2 4/2 6/2'],
    [{ pins: 5, numbering: 'odd-even' }, '1/1 3/1 5/1 2/2 4/2'],
  ])('walks %o as %s', (more, expected) => {
    expect(order(more).join(' ')).toBe(expected);
  });

  it('names lines after their pins, and grounds alike', () => {
    const { lines, connector } = blankProfile(wish({ grounds: ['1', '6'], supplies: ['2'] }));
    expect(connector.pins.map(({ line }) => line)).toEqual([
      ...['GND', 'PIN_2', 'PIN_3', 'PIN_4', 'PIN_5', 'GND'],
    ]);
    expect(lines.GND).toEqual({ kind: 'ground' });
    expect(lines.PIN_2).toEqual({ kind: 'supply' });
  });

  it('takes given names by pin number, whatever the walking order, and finds mates', () => {
    const names = ['GND', 'D_P', 'D_N', '', 'CLK+', 'CLK-'];
    const { lines, connector } = blankProfile(wish({ names, numbering: 'odd-even' }));
    expect(connector.pins.find(({ pin }) => pin === '3')?.line).toBe('D_N');
    expect(lines.D_P).toEqual({ kind: 'signal', mate: 'D_N' });
    expect(lines['CLK+']).toEqual({ kind: 'signal', mate: 'CLK-' });
    expect(lines.GND).toEqual({ kind: 'ground' });
    expect(lines.PIN_4).toEqual({ kind: 'signal' });
  });

  it('passes every check of a profile', () => {
    const profile = blankProfile(wish({ grounds: ['1', '6'], names: ['', 'D_P', 'D_N'] }));
    const { content, problems } = readProfile(JSON.stringify(profile));
    expect(problems.filter(isError)).toEqual([]);
    expect(content).toEqual(profile);
  });

  it.each<[Partial<BlankWish>, RegExp]>([
    [{ grounds: ['7'] }, /there is no pin 7 of 6/],
    [{ grounds: ['1'], supplies: ['1'] }, /pin 1 is named as ground and supply/],
    [{ names: ['A', 'A'], grounds: ['1'] }, /line A is ground at pin 1 and signal at pin 2/],
    [{ names: Array(7).fill('A') }, /7 names for 6 pins/],
  ])('refuses %o in words', (more, words) => {
    expect(() => blankProfile(wish(more))).toThrow(words);
  });
});

describe('a list of pins', () => {
  it('takes spans, commas and blanks', () => {
    expect(pinList('1,4-6; 9 ')).toEqual(['1', '4', '5', '6', '9']);
    expect(pinList('')).toEqual([]);
  });

  it.each(['x', '6-4', '1-', '-3'])('refuses %s', (text) => {
    expect(() => pinList(text)).toThrow(/no pin and no span/);
  });
});
