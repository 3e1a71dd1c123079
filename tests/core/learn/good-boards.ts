// Good boards for the tests of learning, and a small connector for them.
import type { Board } from '../../../src/core/learn/board.js';
import type { LearnOptions } from '../../../src/core/learn/learn-profile.js';
import { createToleranceFactors } from '../../../src/core/learn/tolerance-factors.js';
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';

export const small: Profile = profileFormat.parse({
  format: 'pinwalk-profile/1',
  id: 'small',
  title: 'Made up for a test',
  provenance: { by: 'a test', date: '2026-01-31', how: 'Invented' },
  measure: { function: 'resistance', polarity: 'red-walks' },
  connector: {
    id: 'J1',
    pins: [
      { pin: '1', line: 'GND' },
      { pin: '2', line: 'D0_P' },
      { pin: '3', line: 'D0_N' },
      { pin: '4', line: 'D1_P' },
      { pin: '5', line: 'D1_N' },
      { pin: '6', line: 'RESET' },
      { pin: '7', line: 'VCC' },
      { pin: '8', line: 'VCC' },
      { pin: '9', line: 'AC' },
      { pin: '10', line: 'NC' },
      { pin: '11', line: 'GND' },
    ],
  },
  lines: {
    GND: { kind: 'ground' },
    D0_P: { kind: 'signal', group: 'data', mate: 'D0_N' },
    D0_N: { kind: 'signal', group: 'data', mate: 'D0_P' },
    D1_P: {
      kind: 'signal',
      group: 'data',
      mate: 'D1_N',
      expect: {
        resistance: { nominal: 500, tolerance: 0.08 },
        diode: { nominal: 0.5, tolerance: 0.1 },
      },
    },
    D1_N: { kind: 'signal', group: 'data', mate: 'D1_P' },
    RESET: { kind: 'signal' },
    VCC: { kind: 'supply', charges: true },
    AC: { kind: 'signal' },
    NC: { kind: 'unused' },
  },
});

export const goodValues: Readonly<Record<string, number | null>> = {
  '1': 0.2,
  '2': 388,
  '3': 392,
  '4': 386,
  '5': 389,
  '6': 3920,
  '7': 146,
  '8': 146,
  '9': null,
  '10': null,
  '11': 0.2,
};

export type Change = Readonly<Record<string, number | null | undefined>>;

/** A board that reads the good values times `factor`, but for pins given; undefined leaves a pin out. */
export const board = (name: string, factor = 1, change: Change = {}): Board => ({
  name,
  function: 'resistance',
  polarity: 'red-walks',
  wallTime: null,
  simulated: false,
  pins: small.connector.pins.flatMap(({ pin, line }) => {
    const good = goodValues[pin] ?? null;
    const value = Object.hasOwn(change, pin)
      ? change[pin]
      : good === null || line === 'GND'
        ? good
        : good * factor;
    return value === undefined
      ? []
      : [{ pin, line, value, standardUncertainty: value === null ? null : 0.003 * value }];
  }),
});

/** Boards that differ a little from one another, in a fixed way. */
export const boards = (count: number): Board[] =>
  Array.from({ length: count }, (_, at) => board(`b${at + 1}`, 1 + 0.004 * Math.sin(1 + 2 * at)));

export const options: LearnOptions = {
  factor: createToleranceFactors(),
  function: 'resistance',
  polarity: 'red-walks',
  outliers: 'leave-out',
  by: 'a test',
  date: '2026-02-01',
};
