// Small drivers for the dialogue tests: one of each way of talking, with only what the tests turn.
import type { Driver, ScpiTalk } from '../../../../src/core/meter/driver-format.js';

type Talk = Driver['talk'];

const common = {
  format: 'pinwalk-driver/1',
  title: 'Test meter',
  provenance: { by: 'test', date: '2026-01-31', how: 'made up' },
  generic: true,
  wire: {
    encoding: 'latin1',
    maxFrame: 80,
    sendEnd: '\n',
    serial: { baud: 9600, dataBits: 8, parity: 'none', stopBits: 1 },
  },
  displayCounts: 6000,
  readingsPerS: 10,
  accuracy: [
    { function: 'resistance', fullScale: 6000, resolution: 1, percent: 0.5, counts: 3 },
    { function: 'diode', fullScale: 2, resolution: 0.001, percent: 1, counts: 3 },
  ],
} as const;

const line = {
  pattern: '(?P<value>\\d+\\.\\d+|OL)(?P<unit>[OV])',
  units: {
    O: { factor: 1, functions: ['resistance'] },
    V: { factor: 1, functions: ['diode'] },
  },
  overload: { texts: ['OL'] },
} satisfies Driver['line'];

export const scpiDriver = (changes: Partial<ScpiTalk> = {}): Driver =>
  ({
    ...common,
    id: 'test-scpi',
    accuracy: [...common.accuracy],
    talk: {
      style: 'scpi',
      identify: '*IDN?',
      init: ['*CLS'],
      functions: {
        resistance: {
          select: ['CONF:RES'],
          range: { command: 'RES:RANG {range}', fullScales: [600, 6000, 60000] },
          read: ['READ?'],
        },
      },
      pollS: 0.5,
      timeoutS: 1,
      errorQueue: 'SYST:ERR?',
      overload: { atLeast: 9.8e37 },
      ...changes,
    },
  }) satisfies Driver;

export const keyDriver = (changes: Partial<Extract<Talk, { style: 'key' }>> = {}): Driver => ({
  ...common,
  id: 'test-key',
  accuracy: [...common.accuracy],
  wire: { ...common.wire, sendEnd: '' },
  line,
  talk: { style: 'key', key: 'D', pollS: 0.5, timeoutS: 1, ...changes },
});

export const streamDriver = (
  changes: Partial<Extract<Talk, { style: 'stream' }>> = {},
): Driver => ({
  ...common,
  id: 'test-stream',
  accuracy: [...common.accuracy],
  line,
  talk: { style: 'stream', silentAfterS: 2, ...changes },
});
