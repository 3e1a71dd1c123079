// How much room each part of the walk screen gets. Pure; the sum never exceeds the terminal's rows less one,
// for a screen as tall as the terminal would scroll.

export type Form = 'line' | 'small' | 'medium' | 'large';

export interface Layout {
  readonly form: Form;
  readonly width: number;
  readonly height: number;
  /** Columns of the list at the right, 0 for none. */
  readonly side: number;
  /** Columns of everything else. */
  readonly main: number;
  readonly stripRows: number;
  /** Rows of the trace with its row of marks; 0 for none. */
  readonly traceRows: number;
  /** Empty lines between parts that can be spared. */
  readonly airy: boolean;
}

export const leastColumns = 36;
export const leastRows = 8;

/** Rows of the medium form that are always there: see screens/walk.tsx. */
const mediumFixed = 1 + 1 + 1 + 5 + 3 + 1 + 1 + 1;
const largeFixed = 1 + 1 + 1 + 1 + 10 + 1 + 3 + 1 + 1 + 1;

/** @param wantedStrip rows the connector has. */
export const planLayout = (columns: number, rows: number, wantedStrip: number): Layout => {
  const width = Math.max(1, columns);
  const height = Math.max(1, rows - 1);
  const base = { width, height, side: 0, main: width, stripRows: 0, traceRows: 0, airy: false };
  if (columns < leastColumns || rows < leastRows) return { ...base, form: 'line' };
  if (columns >= 108 && rows >= 34) {
    const side = Math.min(44, Math.floor(width / 3) - 2);
    const stripRows = Math.min(wantedStrip, Math.max(1, Math.floor((height - largeFixed) / 4)));
    const traceRows = Math.max(4, height - largeFixed - stripRows - 3);
    return {
      ...base,
      form: 'large',
      side,
      main: width - side - 2,
      stripRows,
      traceRows,
      airy: true,
    };
  }
  if (columns >= 66 && rows >= 20) {
    const free = height - mediumFixed;
    const stripRows = Math.min(wantedStrip, Math.max(1, Math.floor(free / 3)));
    const left = free - stripRows;
    const airy = left >= 7;
    return {
      ...base,
      form: 'medium',
      stripRows,
      airy,
      traceRows: Math.max(0, left - (airy ? 2 : 0)),
    };
  }
  return { ...base, form: 'small', stripRows: height >= 10 ? 1 : 0 };
};
