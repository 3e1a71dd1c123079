import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastColumns, leastRows, planLayout } from '../../src/ui/layout.js';

/** Rows that screens/walk.tsx and screens/small.tsx draw beside strip, gaps and body. */
const fixed = { line: 0, small: 6, medium: 11, large: 16 } as const;

describe('layout', () => {
  it.each([
    [80, 24, 'medium'],
    [120, 40, 'large'],
    [40, 10, 'small'],
    [36, 8, 'small'],
    [35, 40, 'line'],
    [200, 7, 'line'],
    [1, 1, 'line'],
  ] as const)('should give %d by %d the %s form', (columns, rows, form) => {
    expect(planLayout(columns, rows, 2).form).toBe(form);
  });

  it('should never be taller than the terminal less one row, nor wider', () => {
    fc.assert(
      fc.property(fc.nat(300), fc.nat(120), fc.integer({ min: 1, max: 60 }), (c, r, strip) => {
        const plan = planLayout(c, r, strip);
        const gaps = plan.form === 'large' ? 3 : plan.airy ? 1 : 0;
        expect(plan.height).toBe(Math.max(1, r - 1));
        expect(plan.width).toBe(Math.max(1, c));
        if (plan.form === 'line') return;
        expect(fixed[plan.form] + plan.stripRows + plan.bodyRows + gaps).toBe(plan.height);
        expect(plan.bodyRows).toBeGreaterThanOrEqual(plan.form === 'small' ? 1 : 3);
        expect(plan.stripRows).toBeGreaterThanOrEqual(0);
        expect(plan.side).toBeLessThan(plan.width / 2);
      }),
      { seed: 3, numRuns: 2000 },
    );
  });

  it('should show some screen from its least size on', () => {
    expect(planLayout(leastColumns, leastRows, 1).form).not.toBe('line');
  });
});
