/**
 * The coarsest power of ten of which a value is a whole multiple, down to a millionth of it: 4700 gives 100,
 * 0.512 gives 0.001. Zero is a multiple of everything and gives Infinity.
 *
 * Binary fractions are not exact, so a multiple is meant to within a billionth of the value.
 * @example decadeStep(389.6) // 0.1
 */
export const decadeStep = (value: number): number => {
  const size = Math.abs(value);
  if (size === 0) return Number.POSITIVE_INFINITY;
  let step = 10 ** Math.floor(Math.log10(size));
  for (let digits = 0; digits < 6; digits += 1) {
    const multiple = size / step;
    if (Math.abs(multiple - Math.round(multiple)) < 1e-9 * multiple) return step;
    step /= 10;
  }
  return step;
};
