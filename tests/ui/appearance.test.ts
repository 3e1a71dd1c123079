import { describe, expect, it } from 'vitest';
import { detectAppearance } from '../../src/ui/appearance.js';

describe('appearance', () => {
  it.each([
    [{ NO_COLOR: '1' }, 24, 'none'],
    [{ NO_COLOR: '' }, 24, 'full'],
    [{ TERM: 'dumb' }, 24, 'none'],
    [{}, 1, 'none'],
    [{}, 4, 'sixteen'],
    [{}, 8, 'many'],
    [{ COLORTERM: 'truecolor' }, 8, 'full'],
    [{ NO_COLOR: '1', COLORTERM: 'truecolor' }, 24, 'none'],
  ] as const)('should colour %j with %d bits: %s', (env, depth, colours) => {
    expect(detectAppearance(env, depth).colours).toBe(colours);
  });

  it.each([
    [{ LANG: 'de_DE.UTF-8' }, true],
    [{ LANG: 'C.utf8' }, true],
    [{ LANG: 'C.UTF-8', LC_ALL: 'C' }, false],
    [{ LANG: 'en_US.ISO-8859-1', LC_CTYPE: 'en_US.UTF-8' }, true],
    [{ LC_ALL: '', LANG: 'C.UTF-8' }, true],
    [{}, false],
    [{ LANG: 'C.UTF-8', TERM: 'linux' }, false],
  ] as const)('should know whether %j shows more than ASCII', (env, unicode) => {
    expect(detectAppearance(env, 24).unicode).toBe(unicode);
  });

  it('should know a light background where the terminal tells', () => {
    expect(detectAppearance({ COLORFGBG: '0;15' }, 24).background).toBe('light');
    expect(detectAppearance({ COLORFGBG: '15;default;0' }, 24).background).toBe('dark');
    expect(detectAppearance({}, 24).background).toBe('dark');
  });
});
