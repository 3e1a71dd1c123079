// IEC 60062:2016 + A1:2019, letter-and-digit code: read in an encyclopaedia article that quotes the standard.
import { expect, it } from 'vitest';
import { parseResistorCode } from '../../src/core/numbers/parse-resistor-code.js';

it.each([
  ['R47', 0.47],
  ['4R7', 4.7],
  ['470R', 470],
  ['4K7', 4700],
  ['1K0', 1000],
  ['R10', 0.1],
  ['0R0', 0],
  ['0R', 0], // from memory
  ['47K', 47_000],
  ['47K3', 47_300],
  ['470K', 470_000],
  ['4M7', 4_700_000],
  ['2M2', 2_200_000],
  ['R300', 0.3],
  ['5L00', 0.005],
])('%s is %d ohm', (text, ohms) => {
  expect(parseResistorCode(text)).toEqual({ ohms, tolerance: null });
});

// F and K read; G, J and M, as well as B, C and D, from memory.
it.each([
  ['4K7K', 4700, 0.1],
  ['4K7F', 4700, 0.01],
  ['4K7G', 4700, 0.02],
  ['4K7J', 4700, 0.05],
  ['4K7M', 4700, 0.2],
  ['4K7B', 4700, 0.001],
  ['4K7C', 4700, 0.0025],
  ['4K7D', 4700, 0.005],
])('%s is %d ohm with a tolerance of %d', (text, ohms, tolerance) => {
  expect(parseResistorCode(text)).toEqual({ ohms, tolerance });
});
