// The hash chain of a session file: h(0) is 32 zero bytes, h(i) = SHA-256(h(i-1) followed by the bytes of line i
// without its newline). It shows accidental and partial damage and later edits of a file whose last value was
// noted; whoever rewrites the whole file can recompute it, so it is no proof against that.

/** A value of the chain as 64 hex digits. */
export type ChainValue = string;

export const chainStart: ChainValue = '0'.repeat(64);

/**
 * The chain value after the line in `bytes` from `from` up to `to`, given the value `before` it. The platform
 * provides it, as SHA-256 (FIPS 180-4) is the platform's.
 */
export type ChainStep = (
  before: ChainValue,
  bytes: Uint8Array,
  from?: number,
  to?: number,
) => ChainValue;

/** What a line carries in `prev`: the first 16 hex digits of the chain value before it. */
export const prevOf = (value: ChainValue): string => value.slice(0, 16);

/**
 * The first 16 digits in four groups, to be read off a screen and compared by eye.
 * @example shortFingerprint('e8a6c792aa64f998…') // 'e8a6 c792 aa64 f998'
 */
export const shortFingerprint = (value: ChainValue): string =>
  [0, 4, 8, 12].map((from) => value.slice(from, from + 4)).join(' ');
