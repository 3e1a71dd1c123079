// Which drivers could be meant by what was heard on a link: an identity, or lines a meter sent by itself. It
// proposes and never decides; a driver that misreads even one heard line is left out.
import { isFault, type MeasureFunction, measureFunctions } from '../reading.js';
import { compileDriver } from './compile-driver.js';
import type { Driver } from './driver-format.js';
import { compilePattern } from './line-pattern.js';

/** Drivers that speak SCPI: those that recognise the identity first, then the generic ones; order is kept. */
export const driversForIdentity = (
  drivers: readonly Driver[],
  identity: string,
): readonly Driver[] => {
  const recognising = drivers.filter(
    ({ talk }) =>
      talk.style === 'scpi' &&
      talk.recognise !== undefined &&
      compilePattern(talk.recognise).match(identity.trim()) !== null,
  );
  const generic = drivers.filter(
    ({ talk, generic }) => talk.style === 'scpi' && talk.recognise === undefined && generic,
  );
  return [...recognising, ...generic];
};

const reads = (driver: Driver, lines: readonly string[], measure: MeasureFunction): boolean => {
  const decoder = compileDriver(driver);
  return lines.every((line) => !isFault(decoder.decode(0, line, { function: measure })));
};

/** Drivers with the given talk that read every line; none where no line was heard. */
export const driversForLines = (
  drivers: readonly Driver[],
  lines: readonly string[],
  style: 'stream' | 'key' = 'stream',
): readonly Driver[] =>
  lines.length === 0
    ? []
    : drivers.filter(
        (driver) =>
          driver.talk.style === style &&
          measureFunctions.some((measure) => reads(driver, lines, measure)),
      );
