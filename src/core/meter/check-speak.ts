// Checks that what the virtual bench would say in a driver's name decodes back to what was meant.
import { type Problem, quoted } from '../problems.js';
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

const disagreement = (driver: Driver, row: AccuracyRow, said: Sayable): string | null => {
  try {
    const frame = encodeReading(driver, said, row);
    const asked = { function: row.function, range: row.fullScale };
    const heard = compileDriver(driver).decode(0, frame, asked);
    if (agrees(said, heard, row)) return null;
    return `would be said as ${quoted(frame)}, which reads back as ${JSON.stringify(heard)}`;
  } catch (error) {
    return error instanceof RangeError ? `cannot be said: ${error.message}` : String(error);
  }
};

/** Expects a driver that can be compiled. A driver without `speak` that is not SCPI is left alone. */
export const checkSpeak = (driver: Driver): readonly Problem[] => {
  if (!driver.speak && driver.talk.style !== 'scpi') return [];
  for (const row of driver.accuracy) {
    for (const said of sayablesOf(row)) {
      const why = disagreement(driver, row, said);
      if (why === null) continue;
      return [
        {
          path: ['speak'],
          what: `${row.function} at ${row.fullScale} ${why}`,
          fix: 'make speak, the line grammar and the accuracy rows agree',
        },
      ];
    }
  }
  return [];
};
