import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../src/core/select/chain.js';
import { english } from '../../../src/core/words/english.js';
import { drawChain } from '../../../src/ui/draw/chain-lines.js';
import { widthOf } from '../../../src/ui/draw/line.js';
import { createTheme } from '../../../src/ui/theme.js';

const chain: Chain = {
  line: 'LANE2_P',
  places: [
    { kind: 'joint', name: 'J7 pin 8', probability: 0.04 },
    { kind: 'branch', name: 'TV2', probability: 0 },
    { kind: 'joint', name: 'FL3 pad 1', probability: 0.12 },
    { kind: 'part', name: 'FL3', probability: 0.71 },
    { kind: 'joint', name: 'FL3 pad 4', probability: 0.12 },
    { kind: 'chip', name: 'U5', probability: 0.02 },
  ],
  lead: 0.08,
  other: 0.01,
  none: 0,
};

const drawn = (width: number, unicode: boolean): string[] =>
  drawChain(
    chain,
    width,
    english,
    createTheme({ colours: 'none', background: 'dark', unicode }),
  ).map((line) =>
    line
      .map(({ text }) => text)
      .join('')
      .trimEnd(),
  );

describe('a line drawn as a chain', () => {
  it('should put each share under its place, mark the likeliest, and say what else it may be', () => {
    const [names, shares, rest] = drawn(80, true);
    expect(names).toMatch(/^ J7 pin 8──\(TV2\) *──FL3 pad 1──FL3 *──FL3 pad 4──U5$/);
    expect(shares?.indexOf('71 %')).toBe((names?.indexOf('FL3  ') ?? 0) + 2);
    expect(shares).toMatch(/^ 4 % .* 12 % .*╵ 71 % .*12 % .*2 %$/);
    expect(rest).toBe(' a lead 8 %, something unnamed 1 %');
  });

  it('should need no more than ASCII, nor colour', () => {
    const text = drawn(80, false).join('\n');
    expect(text).toMatch(/^[\x20-\x7e\n]+$/);
    expect(text).toContain('| 71 %');
  });

  it.each([24, 40, 60, 100])('should fit into %d columns', (width) => {
    const lines = drawChain(
      chain,
      width,
      english,
      createTheme({ colours: 'none', background: 'dark', unicode: true }),
    );
    const text = lines.map((line) => line.map((span) => span.text).join('')).join(' ');
    for (const { name } of chain.places) expect(text).toContain(name);
    for (const line of lines.slice(0, -1)) expect(widthOf(line)).toBeLessThanOrEqual(width);
  });
});
