import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import {
  chainNext,
  chainStart,
  fingerprintOf,
  prevOf,
  shortFingerprint,
} from '../../src/core/session-chain.js';
import { sha256 } from '../../src/store/sha256.js';

const bytes = (text: string) => new TextEncoder().encode(text);
const hexOf = (text: string) => Buffer.from(sha256(bytes(text))).toString('hex');

// FIPS 180-4 SHA-256 example messages; digests from memory, recomputed with two implementations.
it.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
])('should hash the FIPS 180-4 message %.20s', (message, digest) => {
  expect(hexOf(message)).toBe(digest);
});

describe('the chain', () => {
  // Own definition (h0 = 32 zero bytes); the two values were calculated independently of this code.
  it('should give the calculated values for two small lines', () => {
    const first = chainNext(sha256, chainStart(), bytes('{"seq":0}'));
    const second = chainNext(sha256, first, bytes('{"seq":1}'));
    expect(fingerprintOf(first)).toBe(
      'e8a6c792aa64f9982027bb2cd9a23a179d4c805c9974b0f8cfc9a6cd815bdf01',
    );
    expect(fingerprintOf(second)).toBe(
      'ba1ea2c64b957b1c823df378d42b042530b2c8a79df368ab6471253b59e68442',
    );
  });

  it('should agree with a hash fed in two parts', () => {
    const before = sha256(bytes('before'));
    const line = bytes('{"seq":7,"text":"µ Ω"}');
    expect(fingerprintOf(chainNext(sha256, before, line))).toBe(
      createHash('sha256').update(before).update(line).digest('hex'),
    );
  });

  it('should begin every session alike', () => {
    expect(prevOf(chainStart())).toBe('0000000000000000');
  });

  it('should show a fingerprint in four groups of four', () => {
    const first = chainNext(sha256, chainStart(), bytes('{"seq":0}'));
    expect(prevOf(first)).toBe('e8a6c792aa64f998');
    expect(shortFingerprint(fingerprintOf(first))).toBe('e8a6 c792 aa64 f998');
  });
});
