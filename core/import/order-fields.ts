import { code, name, note } from '../fields.ts';
import type { Shop } from '../shop/state.ts';
import type { Field, FileFields, Sort } from './field.ts';
import { WORDS } from './vocabulary.ts';

/** A date without a time ends here for a due date: after the day's work in most shops. Common practice, no source. */
export const DUE_CLOCK = '17:00';

/** What a file of work-order lines can say, our own names, in the order in which we write them. */
export const orderColumns = [
  'order',
  'line',
  'customer',
  'part',
  'quantity',
  'extra pieces',
  'material',
  'gauge',
  'colour',
  'length',
  'not before',
  'due',
  'importance',
  'rush',
  'note',
] as const;
export type OrderColumn = (typeof orderColumns)[number];

const SORTS: Readonly<Record<OrderColumn, Sort>> = {
  order: { is: 'text', schema: code },
  line: { is: 'whole', min: 1, max: 9999 },
  customer: { is: 'text', schema: name },
  part: { is: 'named', kind: 'part' },
  quantity: { is: 'whole', min: 1, max: 100_000 },
  'extra pieces': { is: 'whole', min: 0, max: 10_000 },
  material: { is: 'named', kind: 'material' },
  gauge: { is: 'gauge' },
  colour: { is: 'named', kind: 'colour' },
  length: { is: 'length' },
  'not before': { is: 'date', clock: '00:00' },
  due: { is: 'date', clock: DUE_CLOCK },
  importance: { is: 'number', min: 0.1, max: 10 },
  rush: { is: 'yes-no' },
  note: { is: 'text', schema: note },
};

const IN_EVERY_ROW: readonly OrderColumn[] = ['order', 'part', 'quantity', 'gauge', 'colour'];
/** An order's first row says them. */
const ONCE_AN_ORDER: readonly OrderColumn[] = ['customer', 'due'];

const neededOf = (column: OrderColumn, materials: number): Field['needed'] => {
  if (IN_EVERY_ROW.includes(column) || (column === 'material' && materials > 1)) return 'row';
  return ONCE_AN_ORDER.includes(column) ? 'file' : 'no';
};

/** The material may be left out where the shop has one only. */
export const orderFields = (shop: Shop): FileFields => ({
  kind: 'orders',
  key: 'order',
  fields: orderColumns.map((column) => ({
    name: column,
    sort: SORTS[column],
    needed: neededOf(column, shop.material.length),
    words: WORDS[column],
  })),
});
