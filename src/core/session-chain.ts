// The hash chain of a session file: h(0) is 32 zero bytes, h(i) = SHA-256(h(i-1) followed by the bytes of line i
// without its newline). It shows accidental and partial damage and later edits of a file whose last value was
// noted; whoever rewrites the whole file can recompute it, so it is no proof against that.

/** FIPS 180-4 SHA-256: 32 bytes. Given from outside, as nothing here may reach for the platform. */
export type Sha256 = (bytes: Uint8Array) => Uint8Array;

const valueBytes = 32;
const prevBytes = 8;

export const chainStart = (): Uint8Array => new Uint8Array(valueBytes);

/** The chain value after `line` (its bytes, no newline), given the value `before` it. */
export const chainNext = (sha256: Sha256, before: Uint8Array, line: Uint8Array): Uint8Array => {
  const joined = new Uint8Array(valueBytes + line.length);
  joined.set(before);
  joined.set(line, valueBytes);
  return sha256(joined);
};

/** What a line carries in `prev`: the first 16 hex digits of the chain value before it. */
export const prevOf = (value: Uint8Array): string => toHex(value, prevBytes);

/** All 64 hex digits of a chain value: over the last line, the fingerprint of the session. */
export const fingerprintOf = (value: Uint8Array): string => toHex(value, valueBytes);

/**
 * The first 16 digits in four groups, to be read off a screen and compared by eye.
 * @example shortFingerprint('e8a6c792aa64f998…') // 'e8a6 c792 aa64 f998'
 */
export const shortFingerprint = (fingerprint: string): string =>
  [0, 4, 8, 12].map((from) => fingerprint.slice(from, from + 4)).join(' ');

const hexOfByte = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

const toHex = (bytes: Uint8Array, count: number): string => {
  let hex = '';
  for (let i = 0; i < count; i += 1) hex += hexOfByte[bytes[i] ?? 0];
  return hex;
};
