// Promises the exact number of ways to choose, as a bigint: it never rounds. Refuses anything but whole
// numbers from 0 to 1000, past which a ratio of such numbers no longer fits a double.

/**
 * n! / (k! (n - k)!), and 0 where k lies outside 0 to n.
 *
 * @throws RangeError unless n and k are whole and 0 <= n <= 1000.
 * @example binomialCoefficient(8, 4); // 70n
 */
export function binomialCoefficient(n: number, k: number): bigint {
  if (!Number.isInteger(n) || !Number.isInteger(k) || n < 0 || n > 1000) {
    throw new RangeError(`choosing needs whole numbers up to 1000, got ${n} and ${k}`);
  }
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let i = 1; i <= Math.min(k, n - k); i += 1) ways = (ways * BigInt(n - i + 1)) / BigInt(i);
  return ways;
}
