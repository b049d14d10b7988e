import { expect, it } from 'vitest';
import { orderColumns } from '../../../core/import/order-fields.ts';
import type { Answers } from '../../../core/import/answers.ts';
import type { Question, Reading } from '../../../core/import/reading.ts';
import { exampleRow } from '../../../renderer/screens/orders/example-row.ts';
import { base64Of } from '../../../renderer/queries/base64.ts';
import {
  acceptableRows,
  LEFT_OUT,
  rowsThatSay,
  TO_NOTE,
  withCell,
  withColumn,
  withRowsOut,
  withSame,
} from '../../../renderer/screens/import/say.ts';
import { readOrders } from '../../core/import/order-table.ts';
import { aShop } from '../../support/builders.ts';

const HEADER = [
  'Auftrag',
  'Kunde',
  'Teil',
  'Menge',
  'Metall',
  'Dicke',
  'Farbe',
  'Länge (mm)',
  'Termin',
  'Ort',
];
const row = (order: string, own: Record<number, string> = {}) =>
  [order, 'Sheds', 'corner', '40', 'galv', '24', 'moss', '2400', '2026-12-10', 'Halle 2'].map(
    (cell, i) => own[i] ?? cell,
  );
const file = [HEADER, row('2001'), row('2002', { 6: 'RAL 7016' }), row('2003', { 6: 'ral  7016' })];

const read = (answers: Answers): Reading => readOrders(file, aShop(), answers).reading;
const fieldOf = ({ columns }: Reading, title: string) => columns.find((one) => one.title === title)?.field;
const colourAsked = (reading: Reading) =>
  reading.questions.find((one): one is Extract<Question, { is: 'same' }> => one.is === 'same')!;

it('a column that is said to be another field is that field, and no longer the one it was', () => {
  const first = read({});
  expect(fieldOf(first, 'Menge')).toBe('quantity');
  const said = withColumn({}, first, 'Menge', 'extra pieces');
  const after = read(said);
  expect(fieldOf(after, 'Menge')).toBe('extra pieces');
  expect(after.questions.some((one) => one.is === 'column' && one.field === 'quantity')).toBe(true);
  expect(fieldOf(read(withColumn(said, after, 'Menge', 'quantity')), 'Menge')).toBe('quantity');
});

it('a column goes to the note beside those that go there already, and is left out again', () => {
  const first = read({});
  const noted = withColumn({}, first, 'Ort', TO_NOTE);
  expect(read(noted).rows[0]?.cells.find(({ field }) => field === 'note')?.read).toBe('Ort: Halle 2');
  const both = withColumn(noted, read(noted), 'Länge (mm)', TO_NOTE);
  expect(both.toNote).toEqual(['Ort', 'Länge (mm)']);
  expect(fieldOf(read(both), 'Länge (mm)')).toBeNull();
  expect(withColumn(both, read(both), 'Ort', LEFT_OUT).toNote).toEqual(['Länge (mm)']);
});

it('what was said of a column’s unit and marks is forgotten when the field is another column', () => {
  const said: Answers = { units: { quantity: 'ft', length: 'mm' }, decimals: { quantity: 'comma' } };
  const after = withColumn(said, read({}), 'Ort', 'quantity');
  expect(after.units).toEqual({ length: 'mm' });
  expect(after.decimals).toEqual({});
});

it('an unknown text is answered once for all rows that say it, however they write it', () => {
  const first = read({});
  const asked = colourAsked(first);
  expect(asked.rows).toBe(2);
  expect(rowsThatSay(first, asked)).toEqual([3, 4]);
  expect(read(withSame({}, asked, 'moss')).counts).toMatchObject({ new: 3, waiting: 0 });
  expect(read(withRowsOut({}, rowsThatSay(first, asked))).counts).toMatchObject({ new: 1, waiting: 0 });
  const changed = withSame(withSame({}, asked, 'moss'), { what: 'colour', text: 'RAL  7016' }, 'white');
  expect(changed.same).toEqual([{ what: 'colour', text: 'RAL  7016', is: 'white' }]);
});

it('a cell typed twice is as it was typed last', () => {
  const typed = withCell(withCell({}, 2, 'quantity', 'many'), 2, 'quantity', '50');
  expect(typed.cells).toEqual([{ row: 2, field: 'quantity', text: '50' }]);
});

it('rows that are only unlikely can be meant so; rows that are wrong besides cannot', () => {
  const past = [HEADER, row('2001', { 8: '2026-11-02' }), row('2002', { 8: '2026-11-02', 3: '-4' })];
  const { reading } = readOrders(past);
  expect(acceptableRows(reading)).toEqual([2]);
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
