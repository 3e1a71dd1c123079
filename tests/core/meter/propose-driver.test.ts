import { describe, expect, it } from 'vitest';
import type { Driver, ScpiTalk } from '../../../src/core/meter/driver-format.js';
import { driversForIdentity, driversForLines } from '../../../src/core/meter/propose-driver.js';
import { recordingLines, shippedDriver, shippedDrivers } from '../../support/driver-files.js';

const ids = (drivers: readonly Driver[]): string[] => drivers.map(({ id }) => id);
const shipped = shippedDrivers();

describe('driversForIdentity', () => {
  const generic = shippedDriver('scpi-read');
  if (generic.talk.style !== 'scpi') throw new Error('not SCPI');
  const own: Driver = {
    ...generic,
    id: 'acme-one',
    generic: false,
    talk: { ...generic.talk, recognise: 'ACME,DMM-1,.*' },
  };

  it('should propose the driver that recognises the identity first', () => {
    expect(ids(driversForIdentity([...shipped, own], 'ACME,DMM-1,0,1.0 '))[0]).toBe('acme-one');
  });

  it('should not propose a driver made for one instrument that says nothing about its identity', () => {
    const { recognise: _, ...talk } = own.talk as ScpiTalk;
    expect(driversForIdentity([{ ...own, talk }], 'ACME,DMM-1,0,1.0')).toEqual([]);
  });

  it('should propose the generic ones alone to a stranger', () => {
    expect(ids(driversForIdentity([own, ...shipped], 'OTHER,DMM-1,0,1.0'))).toEqual([
      'scpi-initiate-fetch',
      'scpi-measure',
      'scpi-read',
    ]);
  });
});

describe('driversForLines', () => {
  it('should propose the one driver that reads every line', () => {
    expect(ids(driversForLines(shipped, ['R0+038960....', 'R5+999999h...']))).toEqual([
      'stream-range-code',
    ]);
    expect(ids(driversForLines(shipped, ['RES,+389.60,OHM,H---']))).toEqual([
      'stream-fields-flags',
    ]);
    expect(ids(driversForLines(shipped, ['OH  389.6 O '], 'key'))).toEqual(['key-request']);
  });

  it('should leave out a driver that misreads one line', () => {
    expect(ids(driversForLines(shipped, ['  389.6 Ohm', 'rubbish']))).toEqual([]);
  });

  it('should propose nothing where nothing was heard', () => {
    expect(driversForLines(shipped, [])).toEqual([]);
  });

  it('should find a streaming driver again by its own recording', () => {
    const streams = shipped.filter(({ talk }) => talk.style === 'stream');
    expect(streams.length).toBeGreaterThanOrEqual(4);
    for (const { id } of streams) {
      const frames = recordingLines(id) as readonly { frame: string; expect: object }[];
      const good = frames.filter((line) => !('fault' in line.expect)).map(({ frame }) => frame);
      expect(ids(driversForLines(shipped, good))).toContain(id);
    }
  });
});
