import { describe, expect, it } from 'vitest';
import type { PlaybackView } from '../../../src/core/replay/view.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import { ReplayLine } from '../../../src/ui/parts/replay-line.js';
import { createTheme } from '../../../src/ui/theme.js';
import { show } from '../support/show.js';

const view: PlaybackView = {
  atS: 65,
  lengthS: 258,
  at: 700,
  count: 2000,
  speed: 5,
  paused: false,
  ended: false,
  next: {
    kind: 'verdict',
    t: 79,
    from: 800,
    to: 802,
    pin: '6',
    verdict: 'open',
    inS: 14,
  },
  marks: [0.05, 0.3, 0.9],
};

const line = (given: Partial<PlaybackView> = {}, width = 100): string =>
  show(<ReplayLine view={{ ...view, ...given }} width={width} />)[0] ?? '';

describe('replay line', () => {
  it('should say where it stands, how fast, what comes, and the keys', () => {
    expect(line()).toContain('REPLAY');
    expect(line()).toContain('1:05/4:18');
    expect(line()).toContain(' 5x ');
    expect(line()).toContain('n 6 open in 0:14');
    expect(line()).toContain('space pause');
    expect(line()).toContain('? keys');
  });

  it('should say that it is paused, and how to go on', () => {
    expect(line({ paused: true })).toContain('paused');
    expect(line({ paused: true })).toContain('space go on');
    expect(line({ paused: true })).not.toContain('5x');
  });

  it('should say that it is at its end, and how to begin again', () => {
    const end = line({ ended: true, atS: 258, next: null });
    expect(end).toContain('at its end');
    expect(end).toContain('home start');
    expect(end).not.toContain('pause');
  });

  it('should say that nothing is left to find', () => {
    expect(line({ next: null })).toContain('nothing more to find');
  });

  it('should draw here and the finds along the session', () => {
    const bar = /[━─╵●]{8,}/u.exec(line({}, 120))?.[0] ?? '';
    expect([...bar].filter((letter) => letter === '●')).toHaveLength(1);
    expect([...bar].filter((letter) => letter === '╵')).toHaveLength(3);
    expect(bar.indexOf('●') / (bar.length - 1)).toBeCloseTo(65 / 258, 1);
    expect(/[━─╵●]{8,}/u.exec(line({ atS: 0 }, 120))?.[0].startsWith('●')).toBe(true);
    expect(/[━─╵●]{8,}/u.exec(line({ atS: 258 }, 120))?.[0].endsWith('●')).toBe(true);
  });

  it.each([36, 40, 59, 60, 66, 80, 120, 200])(
    'should fit %i columns, whatever it says',
    (width) => {
      const views: Partial<PlaybackView>[] = [
        {},
        { paused: true },
        { ended: true, next: null },
        { atS: 35_999, lengthS: 36_000, speed: 0.25 },
        { next: null },
      ];
      for (const given of views) {
        const drawn = line(given, width);
        expect([...drawn].length).toBeLessThanOrEqual(width);
        expect(drawn).toMatch(/\d:\d\d/u);
        expect(drawn).toContain('? keys');
      }
    },
  );

  it('should name the keys that were chosen', () => {
    const keys = keyMapWith({ next: ['f5'], pause: ['f6'] });
    const [drawn] = show(<ReplayLine view={view} width={100} />, { keys });
    expect(drawn).toContain('f5 6 open');
    expect(drawn).toContain('f6 pause');
  });

  it('should do with plain letters', () => {
    const theme = createTheme({ colours: 'none', background: 'dark', unicode: false });
    const [drawn = ''] = show(<ReplayLine view={view} width={100} />, { theme });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the range of plain letters begins at zero
    expect(drawn).toMatch(/^[\u0000-\u007f]*$/u);
    expect(drawn).toContain('O');
  });

  it('should clean what comes from the file', () => {
    const next = { ...(view.next as NonNullable<PlaybackView['next']>), pin: '\u001b[31m6\u202e' };
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(line({ next })).not.toMatch(/[\u0000-\u001f\u202e]/u);
  });
});
