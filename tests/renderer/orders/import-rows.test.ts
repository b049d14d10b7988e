import { describe, expect, it } from 'vitest';
import { orderColumns } from '../../../core/import/order-fields.ts';
import type { Reading, RowReading } from '../../../core/import/reading.ts';
import { exampleRow } from '../../../renderer/screens/orders/example-row.ts';
import { base64Of } from '../../../renderer/screens/orders/import/base64.ts';
import {
  columnWidths,
  fieldsOf,
  rowsToFix,
  withCell,
} from '../../../renderer/screens/orders/import/import-rows.ts';
import { readOrders } from '../../core/import/order-table.ts';
import { aShop } from '../../support/builders.ts';

const aRow = (row: number, quantity: string, own: Partial<RowReading> = {}): RowReading => ({
  row,
  state: 'new',
  subject: '',
  words: '',
  cells: [
    { field: 'order', text: '1', read: '1' },
    { field: 'quantity', text: quantity, read: quantity },
  ],
  ...own,
});
const rows = [aRow(3, '-5', { state: 'wrong' }), aRow(2, '5')];

describe('rows to fix', () => {
  it('are those that are wrong, with the fields that they show', () => {
    expect(rowsToFix({ rows }).map(({ row }) => row)).toEqual([3]);
    expect(fieldsOf(rows)).toEqual(['order', 'quantity']);
  });

  it('keep everything else when one cell is typed anew', () => {
    const reading = { rows } as unknown as Reading;
    const after = withCell(reading, 3, 'quantity', '7').rows;
    expect(after[1]).toBe(rows[1]);
    expect(after[0]?.cells.map(({ text }) => text)).toEqual(['1', '7']);
  });

  it('get columns as wide as their cells, within reason', () => {
    expect(columnWidths(['quantity'], [aRow(2, 'x'.repeat(300))])).toEqual([22]);
    expect(columnWidths(['order', 'quantity'], rows)).toEqual([5, 8]);
  });
});

it('the example of a file is one that the shop would take', () => {
  const shop = aShop();
  const example = exampleRow(shop);
  const { reading } = readOrders([orderColumns, orderColumns.map((column) => example[column])], shop);
  expect(reading.questions).toEqual([]);
  expect(reading.counts).toMatchObject({ new: 1, wrong: 0, waiting: 0 });
});

it('a file’s bytes cross to the host unchanged, whatever their length', () => {
  for (const length of [0, 1, 2, 3, 32_768, 100_001]) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 31) % 256);
    expect(Buffer.from(base64Of(bytes), 'base64').equals(Buffer.from(bytes))).toBe(true);
  }
});
