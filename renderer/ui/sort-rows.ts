import { compareIds } from '../../core/shop/row-change.ts';

/** Rows in a new order: numbers by size, texts the way people count ("1042/2" before "1042/10"), ties by row id. */
export function sortRows<T>(
  rows: readonly T[],
  by: (row: T) => string | number,
  descending: boolean,
  rowId: (row: T) => string,
): T[] {
  const keyed = rows.map((row) => ({ row, key: by(row), id: rowId(row) }));
  keyed.sort((a, b) => {
    const order =
      typeof a.key === 'number' && typeof b.key === 'number'
        ? a.key - b.key
        : compareIds(String(a.key).toLowerCase(), String(b.key).toLowerCase());
    return (descending ? -order : order) || compareIds(a.id, b.id);
  });
  return keyed.map(({ row }) => row);
}
