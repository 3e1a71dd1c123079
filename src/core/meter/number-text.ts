// Writes numbers the way a meter prints them: a whole number of display steps, in a driver's own form.
import type { Speak } from './driver-format.js';

const mostDecimals = 15;

/** Fewest digits after the point that show `step` exactly, to a part in 10⁹. */
const decimalsOf = (step: number): number => {
  for (let decimals = 0; decimals < mostDecimals; decimals += 1) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) <= 1e-9 * scaled && Math.round(scaled) > 0) {
      return decimals;
    }
  }
  return mostDecimals;
};

const exponentForm = (magnitude: number, digits: number): string => {
  const [mantissa = '0', exponent = '0'] = magnitude.toExponential(digits).split('e');
  const power = Number(exponent);
  return `${mantissa}E${power < 0 ? '-' : '+'}${String(Math.abs(power)).padStart(2, '0')}`;
};

const filled = (sign: string, digits: string, form: Speak['number']): string => {
  const width = form.width ?? 0;
  switch (form.fill ?? 'blanks-first') {
    case 'blanks-first':
      return (sign + digits).padStart(width, ' ');
    case 'blanks-after-sign':
      return sign + digits.padStart(width - sign.length, ' ');
    case 'zeros':
      return sign + digits.padStart(width - sign.length, '0');
  }
};

/**
 * The text of `steps` display steps of size `step`, both in the unit that is printed; `steps` is rounded to a
 * whole number. `counts` prints the steps themselves.
 * @throws RangeError when `step` is not positive or `steps` is not finite.
 */
export const numberText = (
  steps: number,
  step: number,
  form: Speak['number'],
  decimalMark: '.' | ',' = '.',
): string => {
  if (!(step > 0)) throw new RangeError(`step must be positive, not ${step}`);
  if (!Number.isFinite(steps)) throw new RangeError(`steps must be finite, not ${steps}`);
  const whole = Math.abs(Math.round(steps));
  const sign = Math.round(steps) < 0 ? '-' : form.plus;
  const digits = {
    counts: () => String(whole),
    decimal: () => (whole * step).toFixed(decimalsOf(step)),
    exponent: () => exponentForm(whole * step, form.digits ?? 8),
  }[form.notation]();
  return filled(sign, digits.replace('.', decimalMark), form);
};
