import type { Shop } from '../shop/state.ts';
import { twoFigures, wallParts } from '../time/wall.ts';
import { instant } from '../units/brand.ts';
import { orderHeadOf, orderRowOf } from './order-said.ts';
import type { FileRead } from './read-file.ts';

/** A row of a file of orders as it is understood, in the shop's own codes; null where nothing says it. */
export interface UnderstoodRow {
  readonly order: string;
  readonly line: number | null;
  /** Of a row that leaves it empty: its order's. */
  readonly customer: string | null;
  readonly part: string;
  readonly quantity: number;
  readonly material: string;
  readonly gauge: string;
  readonly colour: string;
  /** Null: the part's own. */
  readonly lengthMm: number | null;
  /** "2026-12-01T00:00" on the shop's wall clock. */
  readonly release: string | null;
  /** Of a row that leaves it empty: its order's. */
  readonly due: string | null;
  readonly importance: number | null;
  readonly note: string | null;
}

/** What a file's rows say, in its order, those left out that are wrong or wait for an answer. */
export function understoodRows(shop: Shop, { reading, read }: FileRead): UnderstoodRow[] {
  const state = new Map(reading.rows.map((row) => [row.row, row.state]));
  const customers = new Map<string, string>();
  const dues = new Map<string, number>();
  for (const head of read.flatMap((row) => orderHeadOf(row) ?? [])) {
    const { orderId, customer, terms } = head;
    if (customer !== null && !customers.has(orderId)) customers.set(orderId, customer);
    if (terms.due !== null && !dues.has(orderId)) dues.set(orderId, terms.due);
  }
  const wall = (at: number | null | undefined): string | null =>
    at === null || at === undefined ? null : wallText(at, shop.settings.timeZone);
  return read.flatMap((one): UnderstoodRow[] => {
    const row = orderRowOf(shop, one);
    if (!row || state.get(one.row) === 'wrong' || state.get(one.row) === 'waiting') return [];
    const { orderId, number, customer, line, terms } = row;
    return [
      {
        order: orderId,
        line: number,
        customer: customer ?? customers.get(orderId) ?? null,
        part: line.partId,
        quantity: line.quantity,
        material: line.materialId,
        gauge: line.gauge,
        colour: line.colourId,
        lengthMm: line.lengthMm === null ? null : withoutNoise(line.lengthMm),
        release: wall(terms.release),
        due: wall(terms.due ?? dues.get(orderId)),
        importance: terms.importance,
        note: terms.note,
      },
    ];
  });
}

/** "2026-12-04T17:00" */
function wallText(at: number, timeZone: string): string {
  const { date, hour, minute } = wallParts(instant(at), timeZone);
  return `${date}T${twoFigures(hour)}:${twoFigures(minute)}`;
}

/** Inches times 25.4 leave digits far behind what anyone measures: a millionth of a millimetre is kept. */
const withoutNoise = (lengthMm: number): number => Math.round(lengthMm * 1e6) / 1e6;
