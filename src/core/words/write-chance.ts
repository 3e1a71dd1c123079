// A p-value in as many digits as it deserves.

/** @example writeChance(1 / 70); // "0.014" */
export const writeChance = (p: number): string => {
  if (p >= 0.9995) return '1';
  return p < 0.001 ? '< 0.001' : p.toFixed(p < 0.1 ? 3 : 2);
};
