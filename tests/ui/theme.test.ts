import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { verdicts } from '../../src/core/verdict.js';
import { colourCode } from '../../src/ui/draw/paint.js';
import { type Appearance, createTheme } from '../../src/ui/theme.js';

const every: readonly Appearance[] = (['full', 'many', 'sixteen', 'none'] as const).flatMap(
  (colours) =>
    (['dark', 'light'] as const).flatMap((background) =>
      [true, false].map((unicode) => ({ colours, background, unicode })),
    ),
);

/** Relative luminance and contrast of WCAG 2, from memory. */
const luminance = (hex: string): number => {
  const channels = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  const [r = 0, g = 0, b = 0] = channels.map((c) =>
    c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (one: string, other: string): number => {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
};

describe('theme', () => {
  it.each(every)('should give every verdict its own symbol, one column wide: %j', (appearance) => {
    const { symbol } = createTheme(appearance);
    const all = verdicts.map((verdict) => symbol[verdict]);
    expect(new Set(all).size).toBe(verdicts.length);
    expect(all.every((text) => stringWidth(text) === 1)).toBe(true);
  });

  it.each(every.filter(({ unicode }) => !unicode))(
    'should draw with ASCII only: %j',
    (appearance) => {
      const { symbol, line } = createTheme(appearance);
      const { frame, ...marks } = line;
      const texts = [...Object.values(symbol), ...Object.values(marks), ...Object.values(frame)];
      // biome-ignore lint/suspicious/noControlCharactersInRegex: the range is what is meant
      expect(texts.filter((text) => /[^\u0000-\u007f]/u.test(text))).toEqual([]);
    },
  );

  it.each(every)('should use colours a terminal can be told: %j', (appearance) => {
    const { style, verdict } = createTheme(appearance);
    const colours = [...Object.values(style), ...Object.values(verdict)].flatMap(
      ({ color }) => color ?? [],
    );
    expect(colours.length === 0).toBe(appearance.colours === 'none');
    for (const colour of colours) expect(colourCode(colour)).toMatch(/^(\d+|38;[25];[\d;]+)$/u);
  });

  it.each([
    ['dark', '#14171b'],
    ['light', '#ffffff'],
  ] as const)('should be readable on a %s background', (background, ground) => {
    const { verdict } = createTheme({ colours: 'full', background, unicode: true });
    for (const name of verdicts) {
      const least = name === 'unread' ? 3 : 4.5;
      expect(contrast(verdict[name].color ?? '', ground), name).toBeGreaterThanOrEqual(least);
    }
  });

  it('should fill a large word visibly without colour', () => {
    expect(createTheme({ colours: 'none', background: 'dark', unicode: true }).unfilled).toBe('░');
    expect(createTheme({ colours: 'none', background: 'dark', unicode: false }).unfilled).toBe('.');
    expect(createTheme({ colours: 'full', background: 'dark', unicode: true }).unfilled).toBeNull();
  });
});
