// How much room each part of a screen gets. Pure; the sum never exceeds the terminal's rows less one, for a
// screen as tall as the terminal would scroll.

export type Form = 'line' | 'small' | 'medium' | 'large';

export interface Layout {
  readonly form: Form;
  readonly width: number;
  readonly height: number;
  /** Rows of the strip of pins; 0 for none. */
  readonly stripRows: number;
  /** Empty lines between parts. */
  readonly airy: boolean;
  /** Rows of everything between the reading and the tally: status, scale, trace, or what takes their place. */
  readonly bodyRows: number;
  /** Columns of the list at the right of the body, 0 for none. */
  readonly side: number;
}

export const leastColumns = 36;
export const leastRows = 8;

/** Header, rule, subject, reading, tally, said, keys. */
const mediumFixed = 1 + 1 + 1 + 5 + 1 + 1 + 1;
/** The same with the reading twice as high. */
const largeFixed = mediumFixed + 5;
/** Head, reading, said, keys. */
const smallFixed = 1 + 3 + 1 + 1;

/** @param wantedStrip rows the connector has. */
export const planLayout = (columns: number, rows: number, wantedStrip: number): Layout => {
  const width = Math.max(1, columns);
  const height = Math.max(1, rows - 1);
  const base = { width, height, stripRows: 0, airy: false, bodyRows: 0, side: 0 };
  if (columns < leastColumns || rows < leastRows) return { ...base, form: 'line' };
  if (columns >= 108 && rows >= 36) {
    const free = height - largeFixed;
    const stripRows = Math.min(wantedStrip, Math.floor(free / 3));
    const side = Math.min(46, Math.floor(width / 3));
    const bodyRows = free - stripRows - 3;
    return { ...base, form: 'large', stripRows, airy: true, bodyRows, side };
  }
  if (columns >= 66 && rows >= 20) {
    const free = height - mediumFixed;
    const stripRows = Math.min(wantedStrip, Math.floor(free / 4));
    const airy = free - stripRows >= 10;
    return {
      ...base,
      form: 'medium',
      stripRows,
      airy,
      bodyRows: free - stripRows - (airy ? 1 : 0),
    };
  }
  const free = height - smallFixed;
  const stripRows = free >= 5 ? Math.min(wantedStrip, Math.floor((free - 2) / 3)) : 0;
  return { ...base, form: 'small', stripRows, bodyRows: free - stripRows };
};
