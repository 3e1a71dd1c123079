// How long and how hot a place may be heated, as a profile or the shop's configuration writes it down.
import { z } from 'zod';

export const heatLimits = z.strictObject({
  /** Seconds under heat in one go, and all in all. */
  run: z.number().positive().optional(),
  total: z.number().positive().optional(),
  /** Highest set-point of the tool, in degrees Celsius. */
  setPoint: z.number().positive().optional(),
});
export type HeatLimits = z.infer<typeof heatLimits>;
