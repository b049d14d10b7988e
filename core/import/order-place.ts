import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import type { RowIssue } from './kind.ts';
import type { LineFields, OrderRow } from './order-said.ts';

/** The line that a row is. */
export interface Place {
  readonly row: OrderRow;
  readonly number: number;
  /** As it stands in the shop; null: it is new. */
  readonly before: OrderLine | null;
}

/** A sawn inch has more digits than a file keeps; lengths closer than this are the same. */
const SAME_LENGTH_MM = 0.01;

/** Fields in which a row differs from a line; an empty cell does not. */
export const differences = (row: LineFields, line: OrderLine): (keyof LineFields)[] =>
  (Object.keys(row) as (keyof LineFields)[]).filter((field) => {
    if (row[field] === null) return false;
    if (field === 'lengthMm') return Math.abs((row.lengthMm ?? 0) - line.lengthMm) >= SAME_LENGTH_MM;
    return row[field] !== line[field];
  });

/** What may differ between a row without a number and the line that it is, first what is likeliest. */
const MAY_DIFFER: readonly (readonly (keyof LineFields)[])[] = [
  [],
  ['quantity', 'overrun'],
  ['quantity', 'overrun', 'lengthMm'],
];

/**
 * Gives every row its place: the line it stands in the shop as, or a new one. A row without a number is the first line of
 * its order that says the same, else the only one that differs but in pieces (or in pieces and length); where several
 * could be meant, the row must say its number.
 * @param refuse told of rows that have no place
 */
export function placeRows(shop: Shop, rows: readonly OrderRow[], refuse: (issue: RowIssue) => void): Place[] {
  const byOrder = new Map<string, OrderLine[]>();
  for (const line of shop.line)
    if (line.makeUpFor === null) byOrder.set(line.orderId, [...(byOrder.get(line.orderId) ?? []), line]);
  const current = new Map(shop.line.map((line) => [line.id, line]));
  const claimed = new Map<string, number>();
  const places: Place[] = [];
  const place = (row: OrderRow, number: number, before: OrderLine | null): void => {
    claimed.set(`${row.orderId}/${number}`, row.row);
    places.push({ row, number, before });
  };
  for (const row of rows) {
    if (row.number === null) continue;
    const id = `${row.orderId}/${row.number}`;
    const other = claimed.get(id);
    if (other === undefined) place(row, row.number, current.get(id) ?? null);
    else
      refuse({
        row: row.row,
        field: 'line',
        reason: `Row ${other} is line ${id} already. Give this one another number.`,
      });
  }
  let left = rows.filter(({ number }) => number === null);
  for (const may of MAY_DIFFER) {
    const isFree = (line: OrderLine): boolean => !claimed.has(line.id);
    const fits = (row: OrderRow): OrderLine[] =>
      (byOrder.get(row.orderId) ?? []).filter(
        (line) => isFree(line) && differences(row.line, line).every((field) => may.includes(field)),
      );
    left = left.filter((row) => {
      const [line, ...others] = fits(row);
      if (!line) return true;
      if (others.length > 0 && may.length > 0)
        refuse({
          row: row.row,
          field: 'line',
          reason: `Work order ${row.orderId} has several lines that this row could change (${[line, ...others].map(({ id }) => id).join(', ')}). Write the line’s number, or change it in Orders.`,
        });
      else place(row, line.number, line);
      return false;
    });
  }
  const next = numbering(shop, claimed);
  for (const row of left) {
    const number = next(row.orderId);
    if (number <= LAST_LINE_NUMBER) place(row, number, null);
    else
      refuse({
        row: row.row,
        field: 'line',
        reason: `Work order ${row.orderId} has no line number left below 10,000.`,
      });
  }
  return places.sort((a, b) => a.row.row - b.row.row);
}

/** Gives an order's numbers out one after the other; where it stands is remembered, for a file may hold thousands. */
function numbering(shop: Shop, claimed: ReadonlyMap<string, number>): (orderId: string) => number {
  const next = new Map<string, number>();
  return (orderId) => {
    let number = next.get(orderId) ?? nextLineNumber(shop, orderId);
    while (claimed.has(`${orderId}/${number}`)) number++;
    next.set(orderId, number);
    return number;
  };
}
