import { describe, expect, it } from 'vitest';
import { orderFields } from '../../../core/import/order-fields.ts';
import { WORDS } from '../../../core/import/vocabulary.ts';
import { plainWords } from '../../../core/import/words.ts';
import { aShop } from '../../support/builders.ts';
import { readOrders } from './order-table.ts';

const HEADER = ['Auftrag', 'Pos.', 'Kunde', 'Artikel', 'Menge', 'Dicke', 'Farbe', 'Liefertermin'];
const row = (order: string, customer = 'Sheds', quantity = '4') => [
  order,
  '1',
  customer,
  'corner',
  quantity,
  '24',
  'moss',
  '2026-12-10',
];
const read = (rows: string[][], header?: number) =>
  readOrders(rows, aShop(), header === undefined ? {} : { header }).reading;

describe('a list as other systems write it', () => {
  it('may have titles above its header, and that is said', () => {
    const reading = read([['Offene Aufträge'], [], ['Stand', '30.11.2026'], HEADER, row('2001')]);
    expect(reading.header).toBe(4);
    expect(reading.counts.new).toBe(1);
    expect(reading.notes).toContain(
      'The columns are named in row 4; rows 1, 3 above are titles (“Offene Aufträge”, “Stand”) and left out.',
    );
  });

  it('may repeat its header at each page, and leave rows blank', () => {
    const reading = read([HEADER, row('2001'), [], HEADER, row('2002'), []]);
    expect(reading.rows.map((one) => one.row)).toEqual([2, 5]);
    expect(reading.notes).toContain('Row 4 repeats the header and is left out.');
    expect(reading.notes).toContain('1 blank row is left out.');
  });

  it.each([
    ['a word for a sum', ['Summe', '', '', '', '14.018']],
    ['the word in another column', ['', '', 'Gesamt:', '', '18']],
    ['numbers only, at the end', ['', '', '', '', '18']],
  ])('may end in sums (%s), which are no line', (_what, sum) => {
    const reading = read([HEADER, row('2001'), row('2002'), sum]);
    expect(reading.rows.map((one) => one.row)).toEqual([2, 3]);
    expect(reading.notes.join(' ')).toMatch(/Row 4 is a sum \(“.*”\) and left out/);
  });

  it('keeps the line of a customer whose name is a word for a sum', () => {
    expect(read([HEADER, row('2001', 'Total')]).counts.new).toBe(1);
  });

  it('keeps a row without an order number that is no sum: it is wrong', () => {
    expect(read([HEADER, row('2001'), row('')]).counts).toMatchObject({ new: 1, wrong: 1 });
  });

  it('has its header where somebody says', () => {
    const other = HEADER.map((title) => `${title}.`);
    expect(read([HEADER, other, row('2001')], 2)).toMatchObject({ header: 2, counts: { new: 1, wrong: 0 } });
  });
});

describe('the words for columns', () => {
  it('stand as headings are compared, each once in a field', () => {
    for (const [field, words] of Object.entries(WORDS)) {
      expect(words.filter((word) => plainWords(word) !== word)).toEqual([]);
      expect(new Set(words).size, field).toBe(words.length);
    }
  });

  it('mean one field of an order file each', () => {
    const { fields } = orderFields(aShop());
    const all = fields.flatMap(({ words }) => words);
    expect(all.filter((word, at) => all.indexOf(word) !== at)).toEqual([]);
  });
});
