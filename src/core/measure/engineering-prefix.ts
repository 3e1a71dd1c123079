// Promises the prefix a technician would write. Refuses nothing: beyond the prefixes it keeps the last one.

const prefixes = [
  { exponent: 9, symbol: 'G' },
  { exponent: 6, symbol: 'M' },
  { exponent: 3, symbol: 'k' },
  { exponent: 0, symbol: '' },
  { exponent: -3, symbol: 'm' },
  { exponent: -6, symbol: 'µ' },
  { exponent: -9, symbol: 'n' },
] as const;

export type Prefix = (typeof prefixes)[number];

const plain: Prefix = prefixes[3];
const smallest: Prefix = prefixes[6];

/**
 * The largest prefix that leaves 1 or more before it; tenths of the plain unit stay in it, as meters show
 * them (0.512 V, not 512 mV).
 *
 * @example engineeringPrefix(4700).symbol; // 'k'
 */
export function engineeringPrefix(magnitude: number): Prefix {
  const size = Math.abs(magnitude);
  if (size === 0 || (size >= 0.1 && size < 1)) return plain;
  return prefixes.find(({ exponent }) => size >= Number(`1e${exponent}`)) ?? smallest;
}
