// Walks every shipped driver and every frame of its recording: each frame has its expected reading.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { createFramer } from '../../src/core/framing.js';
import { checkDriver, functionsOf } from '../../src/core/meter/check-driver.js';
import { compileDriver } from '../../src/core/meter/compile-driver.js';
import { bytesOf } from '../../src/core/meter/wire-text.js';
import { measureFunctions } from '../../src/core/reading.js';
import {
  driverIds,
  readJsonFile,
  recordingIds,
  recordingLines,
  shippedDriver,
} from '../support/driver-files.js';

const recorded = z.strictObject({
  frame: z.string().min(1),
  asked: z
    .strictObject({ function: z.enum(measureFunctions), range: z.number().optional() })
    .default({ function: 'resistance' }),
  expect: z.record(z.string(), z.unknown()),
});

const leastFrames = 20;

describe('the shipped drivers', () => {
  it('should be eight kinds or more that talk in all three ways', () => {
    expect(driverIds.length).toBeGreaterThanOrEqual(8);
    const styles = new Set(driverIds.map((id) => shippedDriver(id).talk.style));
    expect(styles).toEqual(new Set(['scpi', 'key', 'stream']));
  });

  it('should have a recording each, and no recording without a driver', () => {
    expect([...recordingIds].sort()).toEqual([...driverIds].sort());
  });

  it.each(driverIds)('%s should pass every check and be named as its file', (id) => {
    const driver = shippedDriver(id);
    expect(driver.id).toBe(id);
    expect(checkDriver(driver)).toEqual([]);
    expect(driver.generic).toBe(true);
    expect(readJsonFile(`drivers/${id}.json`)).toHaveProperty('$schema', './driver.schema.json');
  });

  it.each(driverIds)('%s should offer all four functions', (id) => {
    expect(functionsOf(shippedDriver(id))).toEqual(measureFunctions);
  });

  it.each(driverIds)('%s should read every frame of its recording as expected', (id) => {
    const { wire } = shippedDriver(id);
    const decoder = compileDriver(shippedDriver(id));
    const lines = recordingLines(id).map((line) => recorded.parse(line));
    const seen = new Set<string>();

    for (const { frame, asked, expect: expected } of lines) {
      const framer = createFramer({ ...wire, blocks: true, dropFirstPartial: false });
      // A byte that is no ASCII must reach an ASCII meter's framer as it is.
      const encoding = wire.encoding === 'ascii' ? 'latin1' : wire.encoding;
      const [cut, ...rest] = framer.push(bytesOf(`${frame}\r\n`, encoding));
      expect(rest).toEqual([]);
      const { function: measure, range } = asked;
      const reading = decoder.decode(7.5, cut?.text ?? '', {
        function: measure,
        ...(range === undefined ? {} : { range }),
      });
      expect({ frame, ...reading }).toEqual({ frame, t: 7.5, ...expected });
      for (const kind of ['value', 'overload', 'blank', 'fault', 'flags']) {
        if (kind in expected) seen.add(kind);
      }
      if (Number(expected.value) < 0) seen.add('negative');
    }

    expect(lines.length).toBeGreaterThanOrEqual(leastFrames);
    expect([...seen]).toEqual(expect.arrayContaining(['value', 'negative', 'overload', 'fault']));
  });
});
