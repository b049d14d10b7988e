import type { Field } from './field.ts';
import type { ReadRow } from './read-rows.ts';
import type { Shop } from '../shop/state.ts';
import type { OrderColumn } from './order-fields.ts';

/** What a row says about when and how its line is wanted; null where the cell is empty. */
export interface SaidTerms {
  readonly due: number | null;
  readonly release: number | null;
  readonly importance: number | null;
  readonly note: string | null;
}

/** What a row asks for. */
export interface LineFields {
  readonly partId: string;
  readonly quantity: number;
  /** Null where the cell is empty: as the line stands, none for a new one. */
  readonly overrun: number | null;
  readonly materialId: string;
  readonly gauge: string;
  readonly colourId: string;
  /** Null where the cell is empty: as the line stands, the part's own for a new one. */
  readonly lengthMm: number | null;
}

/** What a row says of its order, whatever else in it is wrong. */
export interface OrderHead {
  readonly row: number;
  readonly orderId: string;
  /** Null where the line number is left out. */
  readonly number: number | null;
  readonly customer: string | null;
  readonly rush: boolean | null;
  readonly terms: SaidTerms;
}

export interface OrderRow extends OrderHead {
  readonly line: LineFields;
}

/** Which column says a field of a line or an order. */
export const COLUMN_OF = {
  partId: 'part',
  quantity: 'quantity',
  overrun: 'extra pieces',
  materialId: 'material',
  gauge: 'gauge',
  colourId: 'colour',
  lengthMm: 'length',
  due: 'due',
  release: 'not before',
  importance: 'importance',
  note: 'note',
  customer: 'customer',
  rush: 'rush',
} as const satisfies Readonly<Record<string, OrderColumn & Field['name']>>;

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);
const figure = (value: unknown): number | null => (typeof value === 'number' ? value : null);

/** @returns null where the row names no order */
export function orderHeadOf({ row, values }: ReadRow): OrderHead | null {
  const orderId = text(values['order']);
  if (!orderId) return null;
  return {
    row,
    orderId,
    number: figure(values['line']),
    customer: text(values['customer']),
    rush: typeof values['rush'] === 'boolean' ? values['rush'] : null,
    terms: {
      due: figure(values['due']),
      release: figure(values['not before']),
      importance: figure(values['importance']),
      note: text(values['note']),
    },
  };
}

/** A row by its cells. @returns null where one that it needs is not there: a caller's bug, since such rows are wrong before */
export function orderRowOf(shop: Shop, read: ReadRow): OrderRow | null {
  const { values } = read;
  const head = orderHeadOf(read);
  const [partId, gauge, colourId] = (['part', 'gauge', 'colour'] as const).map((name) => text(values[name]));
  const quantity = figure(values['quantity']);
  const materialId = text(values['material']) ?? shop.material[0]?.id;
  if (!head || !partId || !gauge || !colourId || !materialId || quantity === null) return null;
  return {
    ...head,
    line: {
      partId,
      quantity,
      overrun: figure(values['extra pieces']),
      materialId,
      gauge,
      colourId,
      lengthMm: figure(values['length']),
    },
  };
}
