import { formatLength } from '../units/length.ts';
import type { LineFields, ReadRow, Refuse } from './order-row.ts';
import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { type OrderLine, usualLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';

interface Places {
  /** Rows that stand in the shop already. */
  readonly known: number[];
  /** New lines by the row they come from, in the file's order. */
  readonly lines: Map<number, OrderLine>;
}

/** A sawn inch has more digits than a file keeps; lengths closer than this are the same. */
const SAME_LENGTH_MM = 0.01;

/**
 * Give every row its place: the line it stands in the shop as, or a new one. A row without a line number is the first
 * line of its order that says the same, so that a file imported twice adds nothing; otherwise it takes the next number.
 */
export function placeLines(shop: Shop, rows: readonly ReadRow[], refuse: Refuse): Places {
  const current = new Map(shop.line.map((line) => [line.id, line]));
  const byOrder = new Map<string, OrderLine[]>();
  for (const line of shop.line) byOrder.set(line.orderId, [...(byOrder.get(line.orderId) ?? []), line]);
  const claimed = new Map<string, number>();
  const nextNumber = numbering(shop, claimed);
  const known: number[] = [];
  const lines = new Map<number, OrderLine>();

  for (const row of rows) {
    if (row.number === null) continue;
    const id = `${row.orderId}/${row.number}`;
    const other = claimed.get(id);
    const line = current.get(id);
    if (other !== undefined) {
      refuse(row.row, 'line', `Row ${other} is line ${id} already. Give this one another number.`);
      continue;
    }
    claimed.set(id, row.row);
    if (!line) lines.set(row.row, newLine(row, row.number));
    else if (refuseDifference(shop, row, line, refuse)) known.push(row.row);
  }
  for (const row of rows) {
    if (row.number !== null) continue;
    const own = byOrder.get(row.orderId) ?? [];
    const same = own.find((line) => !claimed.has(line.id) && differences(row.line, line).length === 0);
    const number = same?.number ?? nextNumber(row.orderId);
    claimed.set(`${row.orderId}/${number}`, row.row);
    if (same) known.push(row.row);
    else if (number > LAST_LINE_NUMBER)
      refuse(row.row, 'line', `Work order ${row.orderId} has no line number left below 10,000.`);
    else lines.set(row.row, newLine(row, number));
  }
  return { known: known.sort((a, b) => a - b), lines: new Map([...lines].sort(([a], [b]) => a - b)) };
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

const newLine = ({ orderId, line }: ReadRow, number: number): OrderLine => ({
  ...usualLine,
  id: `${orderId}/${number}`,
  orderId,
  number,
  ...line,
  overrun: line.overrun ?? usualLine.overrun,
});

const COLUMNS = {
  partId: 'part',
  quantity: 'quantity',
  overrun: 'extra pieces',
  materialId: 'material',
  gauge: 'gauge',
  colourId: 'colour',
  lengthMm: 'length',
} as const;

const differences = (row: LineFields, line: OrderLine): (keyof LineFields)[] =>
  (Object.keys(COLUMNS) as (keyof LineFields)[]).filter((field) =>
    field === 'lengthMm'
      ? Math.abs(row.lengthMm - line.lengthMm) >= SAME_LENGTH_MM
      : row[field] !== null && row[field] !== line[field],
  );

/** True when the row says the same as the line; otherwise every cell that does not is refused. */
function refuseDifference(shop: Shop, row: ReadRow, line: OrderLine, refuse: Refuse): boolean {
  const fields = differences(row.line, line);
  for (const field of fields) {
    const current =
      field === 'lengthMm' ? formatLength(line.lengthMm, shop.settings.units) : String(line[field]);
    refuse(
      row.row,
      COLUMNS[field],
      `Line ${line.id} is in the shop with ${COLUMNS[field]} ${current}. Give this one another line number, or change the line in Orders.`,
    );
  }
  return fields.length === 0;
}
