import { createHash, hash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { chainStart, prevOf, shortFingerprint } from '../../src/core/session-chain.js';
import { chainStep } from '../../src/store/chain-step.js';

const bytes = (text: string) => new TextEncoder().encode(text);

// FIPS 180-4 SHA-256 example messages; digests from memory, recomputed with two implementations.
it.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
])('should stand on a hash that is FIPS 180-4 for %.20s', (message, digest) => {
  expect(hash('sha256', bytes(message), 'hex')).toBe(digest);
});

describe('the chain', () => {
  // Own definition (h0 = 32 zero bytes); the two values were calculated independently of this code.
  it('should give the calculated values for two small lines', () => {
    const first = chainStep(chainStart, bytes('{"seq":0}'));
    const second = chainStep(first, bytes('{"seq":1}'));
    expect(first).toBe('e8a6c792aa64f9982027bb2cd9a23a179d4c805c9974b0f8cfc9a6cd815bdf01');
    expect(second).toBe('ba1ea2c64b957b1c823df378d42b042530b2c8a79df368ab6471253b59e68442');
  });

  it.each([0, 1, 31, 32, 33, 1000, 65_503, 65_504, 300_000])(
    'should agree with a hash fed in two parts for a line of %i bytes, wherever it lies',
    (length) => {
      const before = hash('sha256', bytes('before'), 'hex');
      const line = bytes('µ'.repeat(length)).subarray(0, length);
      const around = Buffer.concat([bytes('left\n'), line, bytes('\nright')]);
      const expected = createHash('sha256').update(before, 'hex').update(line).digest('hex');
      expect(chainStep(before, line)).toBe(expected);
      expect(chainStep(before, around, 5, 5 + length)).toBe(expected);
    },
  );

  it('should begin every session alike', () => {
    expect(chainStart).toBe(Buffer.alloc(32).toString('hex'));
    expect(prevOf(chainStart)).toBe('0000000000000000');
  });

  it('should show a fingerprint in four groups of four', () => {
    const first = chainStep(chainStart, bytes('{"seq":0}'));
    expect(prevOf(first)).toBe('e8a6c792aa64f998');
    expect(shortFingerprint(first)).toBe('e8a6 c792 aa64 f998');
  });
});
