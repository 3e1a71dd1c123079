// Makes a decoder of a driver, once, so that decoding a frame does no set-up work.
import type { MeterDecoder } from './driver-decoder.js';
import type { Driver } from './driver-format.js';
import { lineDecoder } from './line-decoder.js';
import { scpiDecoder } from './scpi-decoder.js';

export type { Asked, MeterDecoder } from './driver-decoder.js';

/**
 * A driver with a line grammar is read by it, whatever its talk; SCPI without one answers plain numbers.
 * @throws SyntaxError when the line pattern does not compile; `checkDriver` says so beforehand.
 * @throws TypeError when a driver that streams or answers to a key has no line grammar.
 */
export const compileDriver = (driver: Driver): MeterDecoder => {
  if (driver.line) return lineDecoder(driver, driver.line);
  if (driver.talk.style === 'scpi') return scpiDecoder(driver, driver.talk);
  throw new TypeError(`driver ${driver.id} has no line grammar`);
};
