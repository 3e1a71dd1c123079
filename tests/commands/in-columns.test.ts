import { describe, expect, it } from 'vitest';
import { inColumns } from '../../src/commands/in-columns.js';

describe('a long line on a terminal', () => {
  it('should break between words, and go on under the first word of an entry', () => {
    const line =
      '  - The battery comes off before any heat; a swollen or dented cell stops the job.';
    const lines = inColumns(line, 40);
    expect(lines).toEqual([
      '  - The battery comes off before any',
      '    heat; a swollen or dented cell',
      '    stops the job.',
    ]);
    expect(lines.every((part) => part.length < 40)).toBe(true);
  });

  it('should leave what fits as it is', () => {
    expect(inColumns('Saved in s1.jsonl', 80)).toEqual(['Saved in s1.jsonl']);
  });
});
