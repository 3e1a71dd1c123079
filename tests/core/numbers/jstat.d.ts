// The few functions of jstat that serve as a second opinion; the package has no types of its own.
declare module 'jstat' {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  export const jStat: {
    normal: Distribution;
    studentt: Distribution;
    chisquare: Distribution;
    beta: Distribution;
    hypgeom: { pdf(hits: number, population: number, marked: number, drawn: number): number };
    gammaln(x: number): number;
  };
}
