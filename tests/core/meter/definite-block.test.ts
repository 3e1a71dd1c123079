// Definite-length blocks, `#<n><len><data>`: IEEE Std 488.2, 8.7.9 (clause from memory).
import { describe, expect, it } from 'vitest';
import { parseDefiniteBlock } from '../../../src/core/meter/definite-block.js';

describe('parseDefiniteBlock', () => {
  it.each([
    // Agilent N4903B guide p. 82 (seen).
    [`#3512${'x'.repeat(512)}`, 'x'.repeat(512)],
    // By the rule.
    ['#15hello', 'hello'],
    ['#10', ''],
    ['#14a\n\rb', 'a\n\rb'],
    ['#9000000001x', 'x'],
  ])('should read %j', (text, data) => {
    expect(parseDefiniteBlock(text)).toBe(data);
  });

  it.each([
    '',
    '#',
    '#0hello',
    '#15hell',
    '#15hello!',
    '#2',
    '#25hello',
    '#x5hello',
    '15hello',
    '#1+',
    '# 5hello',
  ])('should refuse %j', (text) => {
    expect(parseDefiniteBlock(text)).toBeNull();
  });
});
