// The number forms of IEEE 488.2 responses: NR1 (whole), NR2 (with radix point), NR3 (with exponent); NRf is
// any of them. Only a full match is a number: no blanks, no trailing text, nothing guessed.
import type { NumberForms } from './driver-format.js';

export type NumberForm = 'NR1' | 'NR2' | 'NR3';

/** A number still in its written digits, so that a unit's factor can be applied without rounding twice. */
export interface WrittenNumber {
  readonly form: NumberForm;
  /** Sign, digits and point, such as `-1.234`. */
  readonly mantissa: string;
  /** Power of ten written after `E`; 0 without one. */
  readonly exponent: number;
  /** Digits after the point. */
  readonly decimals: number;
}

const nrf =
  /^(?<mantissa>[+-]?(?:\d+(?<point>\.\d*)?|(?<bare>\.\d+)))(?:[eE](?<exponent>[+-]?\d{1,4}))?$/u;

/** Takes a number apart, or returns null where the whole text is not one. */
export const readNumber = (text: string): WrittenNumber | null => {
  const groups = nrf.exec(text)?.groups;
  if (!groups) return null;
  const point = groups.point ?? groups.bare;
  const form = groups.exponent !== undefined ? 'NR3' : point !== undefined ? 'NR2' : 'NR1';
  return {
    form,
    mantissa: groups.mantissa ?? '',
    exponent: Number(groups.exponent ?? 0),
    decimals: point === undefined ? 0 : point.length - 1,
  };
};

const wholePower = (factor: number): number | null => {
  const power = Math.round(Math.log10(factor));
  return Number(`1e${power}`) === factor ? power : null;
};

/**
 * The number times every factor. A factor that is a power of ten moves the point in the written digits, so
 * that `4.35` kΩ is 4350 Ω and not 4349.999…. May be infinite for an absurd exponent.
 */
export const numberValue = (number: WrittenNumber, ...factors: readonly number[]): number => {
  let exponent = number.exponent;
  let rest = 1;
  for (const factor of factors) {
    const power = wholePower(factor);
    if (power === null) rest *= factor;
    else exponent += power;
  }
  const value = Number(`${number.mantissa}e${exponent}`) * rest;
  return value === 0 ? 0 : value;
};

/** One step of the last written digit, times every factor. */
export const digitStep = (number: WrittenNumber, ...factors: readonly number[]): number =>
  numberValue(
    { ...number, mantissa: '1', exponent: number.exponent - number.decimals },
    ...factors,
  );

/**
 * The value of an NRf number, or null where the text is not one.
 * @example parseNrf('273.0E-2') // 2.73
 */
export const parseNrf = (text: string): number | null => {
  const number = readNumber(text);
  return number ? numberValue(number) : null;
};

const afterSign = /^([+-])\s+/u;

/** Brings a driver's own way of writing numbers to the plain forms; what it does not allow stays as it is. */
export const plainNumber = (text: string, forms: NumberForms | undefined): string => {
  const trimmed = text.trim();
  const joined = forms?.blanksAfterSign ? trimmed.replace(afterSign, '$1') : trimmed;
  if (forms?.decimalMark !== ',') return joined;
  return joined.includes('.') ? '' : joined.replace(',', '.');
};
