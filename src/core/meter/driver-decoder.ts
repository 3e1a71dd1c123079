// What a compiled driver offers: frames in, readings out.
import type { MeasureFunction, Reading } from '../reading.js';

/** What the session asked the meter for. */
export interface Asked {
  readonly function: MeasureFunction;
  /** Full scale of a fixed range, in the function's SI unit; absent under autorange. */
  readonly range?: number;
}

export interface MeterDecoder {
  /**
   * Reads one frame, `t` seconds on the link's clock. Never throws: a frame that is not fully understood is
   * a fault with its cleaned raw text, never a number.
   */
  decode(t: number, frameText: string, asked: Asked): Reading;
}
