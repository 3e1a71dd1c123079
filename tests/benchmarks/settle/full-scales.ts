// The ranges of an invented meter: decades whose full scale starts with the display's own first digits.

/** Full scales from low to high: 6000 counts give 600, 6 k, 60 k, 600 k, 6 M, 60 M ohm. */
export const ohmScales = (counts: number): readonly number[] => {
  const lead = counts / 10 ** Math.floor(Math.log10(counts));
  return [1e2, 1e3, 1e4, 1e5, 1e6, 1e7].map((decade) => Number((lead * decade).toPrecision(6)));
};

/** One range in diode function: a step of 1 mV up to 10,000 counts, of 0.1 mV above. */
export const diodeScales = (counts: number): readonly number[] => [
  Number((counts * (counts <= 10_000 ? 1e-3 : 1e-4)).toPrecision(6)),
];

/** The lowest range that still shows the value; the highest one beyond that. */
export const scaleFor = (fullScales: readonly number[], value: number): number =>
  fullScales.find((scale) => value <= scale) ?? fullScales.at(-1) ?? value;

/** The nearest number the display can show. */
export const shown = (value: number, resolution: number): number =>
  Number((Math.round(value / resolution) * resolution).toPrecision(9));
