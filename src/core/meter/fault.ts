// A frame that could not be read: why, and the cleaned raw text, in one short line.
import { cleanText } from '../clean-text.js';
import type { FaultReading } from '../reading.js';

const longestFault = 120;

export const faultOf = (t: number, why: string, raw: string): FaultReading => ({
  t,
  fault: cleanText(`${why}: "${raw}"`, longestFault),
});
