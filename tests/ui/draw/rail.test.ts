import { describe, expect, it } from 'vitest';
import { english } from '../../../src/core/words/english.js';
import { drawRail, type RailView } from '../../../src/ui/draw/rail.js';
import { createTheme } from '../../../src/ui/theme.js';

const theme = createTheme({ colours: 'none', background: 'dark', unicode: true });
const band = { nominal: 388, low: 349.2, high: 426.8 };
const view: RailView = { expected: band, unit: 'Ω', value: null, style: {}, width: 34 };
const rows = (given: Partial<RailView>): string[] =>
  drawRail({ ...view, ...given }, english, theme).map((line) =>
    line.map(({ text }) => text).join(''),
  );

describe('scale', () => {
  it('should show the band with its limits under it', () => {
    expect(rows({})).toEqual([
      'expected 388 Ω',
      '┄┄┄┄┄┄┄┄┄┃━━━━━━━━━━━━━━┃┄┄┄┄┄┄┄┄┄',
      '      349.2 Ω        426.8 Ω',
    ]);
  });

  it('should place the reading and say how far it is off', () => {
    const [said, rail] = rows({ value: 388 });
    expect(said).toBe('expected 388 Ω                 0 %');
    expect(rail?.indexOf('●')).toBe(17);
    expect(rows({ value: 376.36 })[0]).toMatch(/ -3\.0 %$/u);
    expect(rows({ value: 0.3 })[0]).toMatch(/ -100 %$/u);
  });

  it('should point to where the reading went when it left the scale', () => {
    expect(rows({ value: 1 })[1]).toMatch(/^◀┄/u);
    expect(rows({ value: 99_000 })[1]).toMatch(/┄▶$/u);
  });

  it('should say what a ground may read at most', () => {
    const [said, rail] = rows({ expected: { nominal: 0, low: 0, high: 5 }, value: 0.2 });
    expect(said).toBe('under 5 Ω expected');
    expect(rail).toContain('┃●');
  });

  it('should draw no scale where there is none', () => {
    expect(rows({ expected: 'overload', value: 5 })).toEqual(['overload expected', '', '']);
    expect(rows({ expected: null, value: 5 })).toEqual(['nothing to compare with', '', '']);
  });
});
