// Promises ohms, and the tolerance if one is written, from the letter-and-digit code of IEC 60062 ("4K7",
// "R47", "470RJ"). Refuses everything else; the text itself is never repeated in the message.

const multipliers = { L: -3, R: 0, K: 3, M: 6, G: 9 } as const;

const tolerances = {
  B: 0.001,
  C: 0.0025,
  D: 0.005,
  F: 0.01,
  G: 0.02,
  J: 0.05,
  K: 0.1,
  M: 0.2,
} as const;

const shape = /^(\d{0,6})([LRKMGrk])(\d{0,6})([BCDFGJKM]?)$/u;

export interface ResistorCode {
  readonly ohms: number;
  /** As a fraction; null where the code names none. */
  readonly tolerance: number | null;
}

/**
 * The letter stands for the decimal point and gives the multiplier: L 0.001, R 1, K 1 000, M 1 000 000,
 * G 1 000 000 000. A second letter at the end is the tolerance, so that 4K7K is 4.7 kilohm, 10 %.
 *
 * @throws RangeError on anything that is not such a code.
 * @example parseResistorCode('4K7'); // { ohms: 4700, tolerance: null }
 */
export function parseResistorCode(text: string): ResistorCode {
  const [, whole = '', letter = '', fraction = '', tolerance = ''] = shape.exec(text) ?? [];
  if (whole + fraction === '') {
    throw new RangeError('not a resistor code: write it like R47, 4R7, 470R, 4K7 or 2M2');
  }
  const exponent = multipliers[letter.toUpperCase() as keyof typeof multipliers];
  return {
    ohms: Number(`${whole}.${fraction}e${exponent}`),
    tolerance: tolerance === '' ? null : tolerances[tolerance as keyof typeof tolerances],
  };
}
