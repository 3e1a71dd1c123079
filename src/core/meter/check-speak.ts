// Checks that what the virtual bench would say in a driver's name decodes back to what was meant.
import type { Problem } from '../problems.js';
import { isBlank, isFault, isOverload, isValue, type Reading } from '../reading.js';
import { compileDriver } from './compile-driver.js';
import type { AccuracyRow, Driver } from './driver-format.js';
import { encodeReading, type Sayable } from './encode-reading.js';

const sayablesOf = (row: AccuracyRow): Sayable[] => {
  const context = { t: 0, function: row.function };
  const inMiddle = Math.round(row.fullScale / row.resolution / 3) * row.resolution;
  return [
    { ...context, value: inMiddle },
    { ...context, value: -row.resolution },
    { ...context, overload: true },
  ];
};

const agrees = (said: Sayable, heard: Reading, row: AccuracyRow): boolean => {
  if (isFault(heard) || isBlank(said)) return false;
  if (isOverload(said)) return isOverload(heard);
  return (
    isValue(heard) &&
    heard.function === said.function &&
    Math.abs(heard.value - said.value) < row.resolution / 2
  );
};

/** Expects a driver that can be compiled. A driver without `speak` that is not SCPI is left alone. */
export const checkSpeak = (driver: Driver): readonly Problem[] => {
  if (!driver.speak && driver.talk.style !== 'scpi') return [];
  const decoder = compileDriver(driver);
  for (const row of driver.accuracy) {
    for (const said of sayablesOf(row)) {
      const frame = encodeReading(driver, said, row);
      const heard = decoder.decode(0, frame, { function: row.function, range: row.fullScale });
      if (agrees(said, heard, row)) continue;
      return [
        {
          path: ['speak'],
          what: `${row.function} at ${row.fullScale} would be said as "${frame}", which reads back as ${JSON.stringify(heard)}`,
          fix: 'make speak and the line grammar agree',
        },
      ];
    }
  }
  return [];
};
