import { expect, it } from 'vitest';
import { orderFiles } from '../../../core/import/orders.ts';
import { readFile } from '../../../core/import/read-file.ts';
import { aShop, NOW } from '../../support/builders.ts';

/** How the pieces of a file's rows are read, or why not. */
function piecesOf(texts: readonly string[]): (string | undefined)[] {
  const cells = (row: readonly string[]) => row.map((text) => ({ text }));
  const rows = [
    ['Order', 'Customer', 'Part', 'Qty', 'Gauge', 'Colour', 'Due'],
    ...texts.map((qty, k) => [`A-${k}`, 'Thimble Creek Barns', 'corner', qty, '24', 'moss', '2026-12-18']),
  ].map((row, k) => ({ row: k + 1, cells: cells(row) }));
  const past = { order: () => false, line: () => false, record: () => null };
  const grid = { rows, notes: [], sheets: [] };
  const { reading } = readFile(orderFiles, {
    shop: aShop(),
    fileName: 'pieces.csv',
    grid,
    answers: {},
    now: NOW,
    past,
  });
  const byRow = reading.rows.toSorted((a, b) => a.row - b.row);
  return byRow
    .map((one) => one.cells.find(({ field }) => field === 'quantity'))
    .map((cell) => cell?.issue ?? cell?.read);
}

it('the word for pieces may stand behind their number', () => {
  expect(piecesOf(['40 pcs', '40 Stk', '12 St.', '1,200 ea', '8 pièces', '6 Stück', '5 pzas.'])).toEqual([
    '40',
    '40',
    '12',
    '1200',
    '8',
    '6',
    '5',
  ]);
});

it('another word behind a number is not passed over', () => {
  for (const text of ['40 boxes', '40 ft', '3 x 12', '40 pcs 2'])
    expect(piecesOf([text])[0], text).toContain('is not a number');
});
