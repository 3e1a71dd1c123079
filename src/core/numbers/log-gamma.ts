// Promises log Gamma(x) for positive x, to about 15 digits absolute near its zeros 1 and 2 and relative
// elsewhere. Refuses zero and below.
import { requirePositive } from './require-positive.js';
import { stirlingRemainder } from './stirling-remainder.js';

/**
 * Steps x up to 12 or more by Gamma(x + 1) = x Gamma(x), then Stirling's series: DLMF 5.5.1 and 5.11.1.
 *
 * @throws RangeError unless x > 0.
 * @example logGamma(5); // log 24
 */
export function logGamma(x: number): number {
  requirePositive(x, 'the argument of log-gamma');
  let product = 1;
  let stepped = x;
  while (stepped < 12) {
    product *= stepped;
    stepped += 1;
  }
  const stirling = (stepped - 0.5) * Math.log(stepped) - stepped + Math.log(2 * Math.PI) / 2;
  return stirling + stirlingRemainder(stepped) - Math.log(product);
}
