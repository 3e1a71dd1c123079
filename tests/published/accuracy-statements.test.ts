// Accuracy statements worked out in meter manuals and by makers: read in the documents named, unless a row
// says memory.
import { expect, it } from 'vitest';
import { accuracyHalfWidth } from '../../src/core/measure/accuracy-half-width.js';

const guide34401A = 'Keysight 34401A User Guide, ch. 1, Total Measurement Error, p. 21';
const guide34410A = 'Agilent 34410A/11A User Guide, p. 136';

// Shares of a range are written as counts: counts times resolution, both in volt.
const statements = [
  { from: guide34401A, value: 5, resolution: 1e-5, percent: 0.002, counts: 5, half: 150e-6 },
  { from: guide34401A, value: 0, resolution: 1e-5, percent: 0, counts: 4, half: 40e-6 },
  { from: guide34410A, value: 10, resolution: 0, percent: 0.0015, counts: 0, half: 150e-6 },
  { from: guide34410A, value: 1, resolution: 0, percent: 0.0015, counts: 0, half: 15e-6 },
  { from: guide34410A, value: 0.1, resolution: 0, percent: 0.0015, counts: 0, half: 1.5e-6 },
  {
    from: 'an instrument dealer on reading + digits',
    value: 2,
    resolution: 0.001,
    percent: 0.08,
    counts: 2,
    half: 0.0036,
  },
  {
    from: 'an instrument maker on multimeter error',
    value: 2,
    resolution: 0.001,
    percent: 0.5,
    counts: 3,
    half: 0.013,
  },
  {
    from: 'an instrument maker on accuracy',
    value: 100,
    resolution: 0.1,
    percent: 0.8,
    counts: 2,
    half: 1,
  },
  {
    from: 'GUM 4.3.7 example 2 (memory, recomputed)',
    value: 0.928571,
    resolution: 1e-6,
    percent: 14e-4,
    counts: 2,
    half: 14.999994e-6,
  },
];

it.each(statements)('$from: $value V, $percent % + $counts', (row) => {
  const { value, resolution, percent, counts } = row;
  const half = accuracyHalfWidth({ value, resolution, accuracy: { percent, counts } });
  expect(half / row.half).toBeCloseTo(1, 12);
});
