import { expect } from 'vitest';
import type { Answers } from '../../../core/import/answers.ts';
import { importKinds } from '../../../core/import/kinds.ts';
import { readFile, type FileRead } from '../../../core/import/read-file.ts';
import type { RowState } from '../../../core/import/reading.ts';
import type { OrderLine, WorkOrder } from '../../../core/shop/order.ts';
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

/** Texts (and a spreadsheet's numbers) in rows as a file has them, the first row of the file first. */
export const gridOf = (rows: readonly (readonly (string | number)[])[]) => ({
  rows: rows
    .map((cells, index) => ({
      row: index + 1,
      cells: cells.map((cell) =>
        typeof cell === 'number' ? { text: String(cell), number: cell } : { text: cell },
      ),
    }))
    .filter(({ cells }) => cells.some(({ text }) => text !== '')),
  notes: [],
  sheets: [],
});

export const nothingPast = { order: () => false, line: () => false, record: () => null };

/** Read a file of orders. */
export const readOrders = (
  rows: readonly (readonly (string | number)[])[],
  shop: Shop = aShop(),
  answers: Answers = {},
): FileRead =>
  readFile(importKinds.orders, {
    shop,
    fileName: 'orders.csv',
    grid: gridOf(rows),
    answers,
    now: NOW,
    past: nothingPast,
  });

export interface Checked {
  readonly issues: { row: number; column: string; value: string; reason: string }[];
  readonly of: (state: RowState) => number[];
  readonly orders: readonly WorkOrder[];
  readonly lines: readonly OrderLine[];
  readonly read: FileRead;
}

/** What came of reading, in short. */
export function checkedOf(read: FileRead): Checked {
  const { rows } = read.reading;
  const command = read.command?.do === 'orders.import' ? read.command : null;
  return {
    issues: rows
      .flatMap(({ row, cells, words, state }) => [
        ...cells.flatMap(({ field, text, issue }) =>
          issue === undefined ? [] : [{ row, column: field, value: text, reason: issue }],
        ),
        ...(state === 'wrong' && words !== '' ? [{ row, column: '', value: '', reason: words }] : []),
      ])
      .sort((a, b) => a.row - b.row),
    of: (state) => rows.filter((one) => one.state === state).map(({ row }) => row),
    orders: command?.orders ?? [],
    lines: command?.lines ?? [],
    read,
  };
}

/** Read rows under the full header; the first is row 2 of the file. */
export const check = (rows: readonly Row[], shop: Shop = aShop(), answers: Answers = {}): Checked =>
  checkedOf(
    readOrders(
      [Object.keys(RIGHT), ...rows.map((own) => Object.values({ ...RIGHT, ...own }))],
      shop,
      answers,
    ),
  );

/** The only wrong cell of a row. */
export function wrongCell(own: Row, shop?: Shop) {
  const { issues, of } = check([own], shop);
  expect(issues).toHaveLength(1);
  expect(of('new')).toEqual([]);
  return issues[0]!;
}
