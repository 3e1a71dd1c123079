// The normal distribution from a table, for what is asked at every reading. Good to 2e-5; where digits of a
// small probability matter, the numeric foundation's own function is the one to ask.
import { normalCdf } from '../numbers/normal-cdf.js';

const reach = 8;
const perUnit = 64;
const table = Float64Array.from({ length: 2 * reach * perUnit + 2 }, (_, i) =>
  normalCdf(i / perUnit - reach),
);

/** Φ(z) by linear interpolation; 0 and 1 beyond eight standard deviations. */
export const quickNormal = (z: number): number => {
  if (z <= -reach) return 0;
  if (z >= reach) return 1;
  const at = (z + reach) * perUnit;
  const below = Math.floor(at);
  const low = table[below] as number;
  return low + (at - below) * ((table[below + 1] as number) - low);
};
