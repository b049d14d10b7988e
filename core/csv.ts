/** What a cell of a table may hold; null stands as an empty cell. */
export type CsvCell = string | number | boolean | null;

/** A program that opens the file takes a text that begins so for a formula, and computes it. */
const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/**
 * Rows as CSV (RFC 4180): commas, quotation marks where needed, CRLF. The one way in which a table leaves the app. Numbers
 * stand as numbers; a text that a spreadsheet would take for a formula begins with an apostrophe, so that it stays text.
 */
export const toCsv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

function cellText(value: CsvCell): string {
  if (value === null) return '';
  if (typeof value !== 'string') return String(value);
  const text = FORMULA.test(value) && !NUMBER.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
