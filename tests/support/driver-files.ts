// The shipped drivers and their recordings, read from disk for tests that walk all of them.
import { readdirSync, readFileSync } from 'node:fs';
import { type Driver, driverFormat } from '../../src/core/meter/driver-format.js';

const root = new URL('../../', import.meta.url);

export const driverIds: readonly string[] = readdirSync(new URL('drivers/', root))
  .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
  .map((name) => name.slice(0, -'.json'.length));

export const readJsonFile = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(path, root), 'utf8'));

/** @throws ZodError when the file does not fit the schema. */
export const shippedDriver = (id: string): Driver =>
  driverFormat.parse(readJsonFile(`drivers/${id}.json`));

export const shippedDrivers = (): readonly Driver[] => driverIds.map(shippedDriver);

/** Parsed lines of a driver's recording. */
export const recordingLines = (id: string): readonly unknown[] =>
  readFileSync(new URL(`recordings/drivers/${id}.jsonl`, root), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line): unknown => JSON.parse(line));

export const recordingIds: readonly string[] = readdirSync(new URL('recordings/drivers/', root))
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => name.slice(0, -'.jsonl'.length));
