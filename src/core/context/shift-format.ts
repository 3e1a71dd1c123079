// How this meter, or this board, reads a class of lines beside what is expected, as events tell it.
import { z } from 'zod';

/** Of the factor, or in volt; with the pins and independent groups that agree. */
const told = {
  standardUncertainty: z.number().nonnegative(),
  pins: z.int().positive(),
  groups: z.int().positive(),
};

/** A factor in resistance, volts in diode test; null where there is nothing to tell. */
export const shiftTold = z
  .union([
    z.strictObject({ scale: z.number().positive(), ...told }),
    z.strictObject({ offset: z.number(), ...told }),
  ])
  .nullable();
