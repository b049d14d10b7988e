import { describe, expect, it } from 'vitest';
import { orderColumns } from '../../../core/import/order-columns.ts';
import { checkOrderRows } from '../../../core/import/order-rows.ts';
import { exampleRow } from '../../../renderer/screens/orders/example-row.ts';
import { base64Of } from '../../../renderer/screens/orders/import/base64.ts';
import {
  columnWidths,
  rowsToFix,
  withCell,
  withoutRow,
} from '../../../renderer/screens/orders/import/import-rows.ts';
import { aShop, NOW } from '../../support/builders.ts';

const header = ['order', 'quantity'];
const rows = [
  { row: 2, cells: ['1', '5'] },
  { row: 3, cells: ['2', '-5'] },
  { row: 4, cells: ['3'] },
];

describe('rows to fix', () => {
  it('are the rows with problems, each reason at its column', () => {
    const issues = [
      { row: 3, column: 'quantity', value: '-5', reason: 'Too few.' },
      { row: 3, column: 'due', value: '', reason: 'No due date.' },
    ];
    expect(rowsToFix({ header, rows, issues })).toEqual([
      { row: 3, cells: ['2', '-5'], reasons: { quantity: 'Too few.', '': 'No due date.' } },
    ]);
  });

  it('keep everything else when one cell is typed anew, also in a short row', () => {
    expect(withCell(rows, 4, 1, '7')).toEqual([rows[0], rows[1], { row: 4, cells: ['3', '7'] }]);
    expect(withoutRow(rows, 3).map(({ row }) => row)).toEqual([2, 4]);
  });

  it('get columns as wide as their cells, within reason', () => {
    expect(columnWidths(['note'], [{ cells: ['x'.repeat(300)] }])).toEqual([22]);
    expect(columnWidths(['no', 'customer'], [{ cells: ['1', 'Ann'] }])).toEqual([4, 8]);
  });
});

it('the example of a file is one that the shop would take', () => {
  const shop = aShop();
  const example = exampleRow(shop);
  const checked = checkOrderRows(
    shop,
    orderColumns,
    [{ row: 2, cells: orderColumns.map((c) => example[c]) }],
    NOW,
  );
  expect(checked.ok && checked.value.issues).toEqual([]);
  expect(checked.ok && checked.value.ready).toEqual([2]);
});

it('a file’s bytes cross to the host unchanged, whatever their length', () => {
  for (const length of [0, 1, 2, 3, 32_768, 100_001]) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 31) % 256);
    expect(Buffer.from(base64Of(bytes), 'base64').equals(Buffer.from(bytes))).toBe(true);
  }
});
