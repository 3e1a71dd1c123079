// Checks a driver file beyond its schema: does the pattern compile, is every table complete, do the tables
// agree with one another, does the meter it imitates decode back? Says where each problem lies and what to do.
import type { Problem } from '../problems.js';
import { type MeasureFunction, measureFunctions } from '../reading.js';
import { rangesOf } from './accuracy.js';
import { checkLine } from './check-line.js';
import { checkSpeak } from './check-speak.js';
import type { Driver } from './driver-format.js';
import { compilePattern } from './line-pattern.js';
import { rangePlace } from './scpi-vocabulary.js';

/** The functions a driver can ask for or recognise in a line. */
export const functionsOf = (driver: Driver): readonly MeasureFunction[] => {
  const { talk, line } = driver;
  const named = new Set<MeasureFunction | undefined>([
    line?.function,
    ...Object.values(line?.functions ?? {}),
    ...Object.values(line?.units ?? {}).flatMap((unit) => unit.functions),
    ...Object.values(line?.ranges ?? {}).map((range) => range.function),
  ]);
  return measureFunctions.filter(
    (measure) => named.has(measure) || (talk.style === 'scpi' && talk.functions[measure]),
  );
};

const checkAccuracy = (driver: Driver): Problem[] => {
  const missing = functionsOf(driver)
    .filter((measure) => rangesOf(driver, measure).length === 0)
    .map((measure) => ({
      path: ['accuracy'],
      what: `no accuracy row for ${measure}, which the driver offers`,
      fix: `add a row with "function": "${measure}", or leave the function out`,
    }));
  const rows = driver.accuracy.flatMap((row, index) => {
    const path = ['accuracy', index];
    const problems: Problem[] = [];
    const counts = row.fullScale / row.resolution;
    if (counts > driver.displayCounts * 1.05) {
      problems.push({
        path: [...path, 'resolution'],
        what: `${row.fullScale} in steps of ${row.resolution} is ${Math.round(counts)} counts, more than the display's ${driver.displayCounts}`,
        fix: 'write fullScale and resolution in ohm or volt, and displayCounts as the display shows it',
      });
    }
    const twin = driver.accuracy.findIndex(
      (other) => other.function === row.function && other.fullScale === row.fullScale,
    );
    if (twin < index) {
      problems.push({
        path,
        what: `${row.function} at ${row.fullScale} stands twice`,
        fix: `keep one of rows ${twin} and ${index}`,
      });
    }
    return problems;
  });
  return [...missing, ...rows];
};

const checkScpi = (driver: Driver): Problem[] => {
  const { talk } = driver;
  if (talk.style !== 'scpi') return [];
  const problems: Problem[] = [];
  if (!measureFunctions.some((measure) => talk.functions[measure])) {
    problems.push({
      path: ['talk', 'functions'],
      what: 'no function is offered',
      fix: 'add at least "resistance" with its select and read commands',
    });
  }
  for (const measure of measureFunctions) {
    const offered = talk.functions[measure];
    if (!offered) continue;
    const path = ['talk', 'functions', measure];
    if (offered.range && offered.range.command.split(rangePlace).length !== 2) {
      problems.push({
        path: [...path, 'range', 'command'],
        what: `the command must hold ${rangePlace} once`,
        fix: `write it where the full scale belongs, such as "CONF:RES ${rangePlace}"`,
      });
    }
    if (!offered.read.at(-1)?.split(' ')[0]?.endsWith('?')) {
      problems.push({
        path: [...path, 'read', offered.read.length - 1],
        what: 'the last read command asks nothing',
        fix: 'end its header with "?", since its answer is the reading',
      });
    }
    offered.range?.fullScales.forEach((fullScale, index) => {
      if (rangesOf(driver, measure).some((row) => row.fullScale === fullScale)) return;
      problems.push({
        path: [...path, 'range', 'fullScales', index],
        what: `no accuracy row for ${measure} at ${fullScale}`,
        fix: 'add the row, or leave the range out',
      });
    });
  }
  const query = talk.functionQuery;
  if (query !== undefined && !query.send.split(' ')[0]?.endsWith('?')) {
    problems.push({
      path: ['talk', 'functionQuery', 'send'],
      what: 'the function query asks nothing',
      fix: 'end its header with "?", such as "FUNC?"',
    });
  }
  for (const measure of query === undefined ? [] : measureFunctions) {
    if (!talk.functions[measure] || Object.values(query?.answers ?? {}).includes(measure)) continue;
    problems.push({
      path: ['talk', 'functionQuery', 'answers'],
      what: `no answer stands for ${measure}`,
      fix: `add what the meter answers when it measures ${measure}`,
    });
  }
  if (talk.recognise !== undefined) {
    try {
      compilePattern(talk.recognise);
    } catch (error) {
      problems.push({
        path: ['talk', 'recognise'],
        what: error instanceof Error ? error.message : 'the pattern does not compile',
        fix: 'use RE2 syntax: no look-around, no back-references',
      });
    }
  }
  return problems;
};

/** Every problem found, in the order of the file's parts; none means the driver can be compiled and used. */
export const checkDriver = (driver: Driver): readonly Problem[] => {
  const problems = [...checkAccuracy(driver), ...checkScpi(driver), ...checkLine(driver)];
  return problems.length > 0 ? problems : checkSpeak(driver);
};
