// One field of a CSV file after RFC 4180. A text that a spreadsheet would run as a formula is led by an apostrophe
// and so stays a text; numbers are written by us and need none.

/** Signs that begin a formula, in their full-width forms too, perhaps after blanks. */
const formula = /^[\s\u00A0]*[=+\-@＝＋－＠|%]/u;
/** RFC 4180, 2.6, and what other separators would take for the end of a field. */
const needsQuotes = /[",\r\n;\t]|^[ ']|[ ]$/u;

export type CsvValue = string | number | boolean | null;

/** @throws RangeError for a number that is not finite. */
export const csvField = (value: CsvValue): string => {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${value} cannot stand in a table`);
    return String(value);
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = formula.test(value) ? `'${value}` : value;
  return needsQuotes.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** One record with its line end (RFC 4180, 2.1). */
export const csvRecord = (values: readonly CsvValue[]): string =>
  `${values.map(csvField).join(',')}\r\n`;
