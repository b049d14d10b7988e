import { expect } from 'vitest';
import { checkOrderRows, type CheckedRows } from '../../../core/import/order-rows.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aShop, NOW } from '../../support/builders.ts';

/** A row that is right in every cell; a test says what is different. */
export const RIGHT = {
  order: '2001',
  line: '1',
  customer: 'Sheds',
  part: 'corner',
  quantity: '40',
  'extra pieces': '3',
  material: 'galv',
  gauge: '24',
  colour: 'moss',
  length: '96',
  'not before': '2026-12-01',
  due: '2026-12-10 14:00',
  importance: '2',
  rush: 'yes',
  note: 'call first',
};
export type Row = Partial<Record<keyof typeof RIGHT, string>>;

/** Check rows under the full header; the first is row 2 of the file. */
export function check(rows: readonly Row[], shop: Shop = aShop()): CheckedRows {
  const table = rows.map((own, i) => ({ row: i + 2, cells: Object.values({ ...RIGHT, ...own }) }));
  const result = checkOrderRows(shop, Object.keys(RIGHT), table, NOW);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.value;
}

/** The only wrong cell of a row. */
export function wrongCell(own: Row, shop?: Shop) {
  const { issues, ready } = check([own], shop);
  expect(issues).toHaveLength(1);
  expect(ready).toEqual([]);
  return issues[0]!;
}
