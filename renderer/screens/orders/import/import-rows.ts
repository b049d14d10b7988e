import type { Reading, RowReading } from '../../../../core/import/reading.ts';

/** The rows that cannot be taken as they are, in file order. */
export const rowsToFix = ({ rows }: Pick<Reading, 'rows'>): RowReading[] =>
  rows.filter(({ state }) => state === 'wrong');

/** The fields that those rows show, in the order in which they are read. */
export function fieldsOf(rows: readonly RowReading[]): string[] {
  return [...new Set(rows.flatMap(({ cells }) => cells.map(({ field }) => field)))];
}

/** The reading with one cell typed again. */
export const withCell = (reading: Reading, row: number, field: string, text: string): Reading => ({
  ...reading,
  rows: reading.rows.map((one) =>
    one.row === row
      ? { ...one, cells: one.cells.map((cell) => (cell.field === field ? { ...cell, text } : cell)) }
      : one,
  ),
});

const NARROWEST = 4;
const WIDEST = 22;

/** Characters that fit into each column: as many as its longest cell or title has, within reason. */
export const columnWidths = (fields: readonly string[], rows: readonly RowReading[]): number[] =>
  fields.map((field) => {
    const longest = rows.reduce(
      (most, { cells }) => Math.max(most, cells.find((cell) => cell.field === field)?.text.length ?? 0),
      field.length,
    );
    return Math.min(WIDEST, Math.max(NARROWEST, longest));
  });
