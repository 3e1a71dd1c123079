import { describe, expect, it } from 'vitest';
import type { StripRow } from '../../../src/core/select/strip.js';
import { widthOf } from '../../../src/ui/draw/line.js';
import { drawStripRow, stripSize } from '../../../src/ui/draw/strip-line.js';
import { createTheme } from '../../../src/ui/theme.js';

const theme = createTheme({ colours: 'none', background: 'dark', unicode: true });
const row = (count: number, here: number): StripRow => ({
  row: 1,
  cells: Array.from({ length: count }, (_, index) => ({
    index,
    pin: String(index + 1),
    verdict: index < here ? ('normal' as const) : ('unread' as const),
    open: false,
    here: index === here,
  })),
});
const draw = (given: StripRow, width: number): string => {
  const size = stripSize([given], width, 8);
  const line = drawStripRow(given, ' row 1', size, theme.style.accent, theme);
  expect(widthOf(line)).toBeLessThanOrEqual(width);
  return line.map(({ text }) => text).join('');
};

describe('row of pins', () => {
  it('should show every pin and the place among them', () => {
    expect(draw(row(5, 2), 40)).toBe(' row 1     ━     ━     3     ·     ·  ');
  });

  it('should make the cells narrower before it leaves any out', () => {
    expect(draw(row(20, 1), 79)).toContain(' ━  2 ');
    expect(draw(row(60, 1), 70)).toBe(` row 1  ━2${'·'.repeat(58)}`);
  });

  it('should show the part around the place of a row too long, and that there is more', () => {
    const text = draw(row(300, 150), 48).slice(8);
    expect(text).toHaveLength(40);
    expect([text[0], text.at(-1)]).toEqual(['…', '…']);
    expect(text).toContain('━·');
    expect(draw(row(300, 0), 48).slice(8)[0]).toBe('1');
    expect(draw(row(300, 299), 48).at(-1)).toBe('·');
  });

  it('should show the place by more than colour', () => {
    const size = stripSize([row(5, 2)], 40, 8);
    const here = drawStripRow(row(5, 2), '', size, {}, theme).find(({ style }) => style?.inverse);
    expect(here?.text.trim()).toBe('3');
  });
});
