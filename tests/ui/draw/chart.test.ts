import { describe, expect, it } from 'vitest';
import type { Trace, TracePoint } from '../../../src/core/select/trace.js';
import { drawChart } from '../../../src/ui/draw/chart.js';
import { createDots, dotCharacter, drawStroke, setDot } from '../../../src/ui/draw/dots.js';
import { createTheme } from '../../../src/ui/theme.js';

const theme = createTheme({ colours: 'full', background: 'dark', unicode: true });
const ascii = createTheme({ colours: 'none', background: 'dark', unicode: false });
const point = (t: number, at: number | null, still = false): TracePoint => ({ t, at, still });
const trace = (points: readonly TracePoint[], marks: Trace['marks'] = []): Trace => ({
  points,
  marks,
  reading: null,
});
const size = { width: 10, rows: 5, spanS: 10 };
const rows = (drawn: ReturnType<typeof drawChart>): string[] =>
  drawn.lines.map((line) => line.map(({ text }) => text).join(''));

describe('dots', () => {
  it('should set single dots by the Braille code', () => {
    const dots = createDots(2, 1);
    setDot(dots, 0, 0);
    setDot(dots, 3, 3);
    expect([dotCharacter(dots, 0, 0, true), dotCharacter(dots, 1, 0, true)]).toEqual(['⠁', '⢀']);
    expect(dotCharacter(dots, 0, 0, false)).toBe("'");
  });

  it('should draw a stroke without gaps, either way', () => {
    for (const [from, to] of [
      [
        { x: 0, y: 0 },
        { x: 7, y: 3 },
      ],
      [
        { x: 7, y: 3 },
        { x: 0, y: 0 },
      ],
    ] as const) {
      const dots = createDots(4, 1);
      drawStroke(dots, from, to);
      const text = [0, 1, 2, 3].map((column) => dotCharacter(dots, column, 0, true)).join('');
      expect(text).not.toContain(' ');
    }
  });

  it('should ignore what lies outside', () => {
    const dots = createDots(1, 1);
    for (const [x, y] of [
      [-1, 0],
      [2, 0],
      [0, 4],
      [0, -1],
    ] as const)
      setDot(dots, x, y);
    expect([...dots.cells]).toEqual([0]);
  });
});

describe('trace', () => {
  it('should put the newest reading at the right edge', () => {
    const drawn = rows(drawChart(trace([point(10, 1)]), 10, size, theme));
    expect(drawn[0]).toBe('         ⠈');
    const later = rows(drawChart(trace([point(10, 1)]), 15, size, theme));
    expect(later[0]?.trimEnd()).toBe('    ⠈');
    const gone = rows(drawChart(trace([point(10, 1)]), 30, size, theme));
    expect(gone[0]?.trim()).toBe('');
  });

  it('should draw both limits, and say in which rows', () => {
    const drawn = drawChart(trace([]), 10, size, theme);
    const all = rows(drawn);
    expect(drawn.highRow).toBeLessThan(drawn.lowRow);
    expect(all[drawn.highRow]?.trim()).not.toBe('');
    expect(all[drawn.lowRow]?.trim()).not.toBe('');
    expect(all.filter((row) => row.trim() !== '')).toHaveLength(2);
  });

  it('should leave a gap for overload', () => {
    const joined = drawChart(trace([point(1, 1), point(1.9, 1), point(2.8, 1)]), 10, size, theme);
    const cut = drawChart(trace([point(1, 1), point(1.9, null), point(2.8, 1)]), 10, size, theme);
    expect(rows(joined)[0]?.trim()).not.toContain(' ');
    expect(rows(cut)[0]?.trim()).toContain(' ');
  });

  it('should tell what rests from what moves', () => {
    const { lines } = drawChart(trace([point(2, 1), point(8, 1, true)]), 10, size, theme);
    const styles = lines[0]?.filter(({ text }) => text.trim() !== '').map(({ style }) => style);
    expect(styles).toEqual([theme.style.moving, theme.style.still]);
  });

  it('should name the judged pins under their moments, without running into one another', () => {
    const marks = [
      { t: 4, pin: '7', verdict: 'normal' },
      { t: 4.2, pin: '8', verdict: 'open' },
      { t: 8, pin: '9', verdict: 'open' },
    ] as const;
    const drawn = rows(drawChart(trace([], marks), 10, size, theme));
    expect(drawn.at(-1)?.trimEnd()).toBe('   ○8  ○9');
    const now = [{ t: 10, pin: '12', verdict: 'normal' }] as const;
    expect(rows(drawChart(trace([], now), 10, size, theme)).at(-1)).toMatch(/^ {7}━12/u);
  });

  it('should move left evenly: no dot wavers between two frames', () => {
    const points = Array.from({ length: 20 }, (_, at) => point(at * 0.37, 1));
    let before = '';
    for (let t = 8; t < 9; t += 0.05) {
      const row = rows(drawChart(trace(points), t, { ...size, width: 30 }, theme))[0] ?? '';
      const columns = row.trimEnd().length;
      if (before !== '') expect(columns).toBeLessThanOrEqual(before.trimEnd().length);
      before = row;
    }
  });

  it('should do with ASCII where there is no more', () => {
    const drawn = rows(drawChart(trace([point(3, 0.5), point(9, 1)]), 10, size, ascii)).join('');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the range is what is meant
    expect(drawn).toMatch(/^[\u0000-\u007f]+$/u);
    expect(drawn).toContain("'");
  });
});
