import { describe, expect, it } from 'vitest';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
import { check, wrongCell, type Row } from './order-table.ts';

describe('rows of one order', () => {
  it('need the order’s own columns once', () => {
    const { orders, lines, of } = check([
      {},
      { line: '2', customer: '', 'not before': '', due: '', importance: '', rush: '', note: '' },
    ]);
    expect(of('new')).toEqual([2, 3]);
    expect(orders).toHaveLength(1);
    expect(lines.map((l) => l.id)).toEqual(['2001/1', '2001/2']);
  });

  it('that differ in due date keep each its own: the order has the first, the line the other', () => {
    const { orders, lines, issues } = check([{}, { line: '2', due: '2026-12-11 14:00' }]);
    expect(issues).toEqual([]);
    expect(orders.map(({ due }) => due)).toEqual([at('2026-12-10', '14:00')]);
    expect(lines.map(({ due }) => due)).toEqual([null, at('2026-12-11', '14:00')]);
  });

  it('that differ in customer are refused: an order has one', () => {
    const { issues, of } = check([{}, { line: '2', customer: 'Barns' }]);
    expect(of('new')).toEqual([2]);
    expect(issues).toMatchObject([
      { row: 3, column: 'customer', reason: expect.stringMatching(/has customer “Sheds”/) as string },
    ]);
  });

  it('may have no line numbers: each takes the next free one', () => {
    const { lines } = check([{ line: '' }, { line: '2' }, { line: '' }, { line: '' }]);
    expect(lines.map((l) => l.number)).toEqual([1, 2, 3, 4]);
  });

  it('may not have one line number twice', () => {
    const { issues, of } = check([{}, {}]);
    expect(of('new')).toEqual([2]);
    expect(issues[0]).toMatchObject({
      row: 3,
      column: 'line',
      reason: expect.stringMatching(/Row 2 is line 2001\/1 already/),
    });
  });

  it('without a customer or a due date anywhere are all refused', () => {
    const { issues } = check([{ customer: '', due: '' }]);
    expect(issues.map((p) => p.column).sort()).toEqual(['customer', 'due']);
  });
});

describe('a row of an order that is in the shop', () => {
  const same: Row = {
    order: '1042',
    customer: 'Invented Roofing',
    quantity: '20',
    'extra pieces': '',
    length: '100',
    'not before': '',
    due: '2026-12-04',
    importance: '1',
    rush: 'no',
    note: '',
  };

  it('is known when it says the same, even after its due date', () => {
    const late = aShop({ order: [anOrder({ due: at('2026-11-20') })], line: [aLine()] });
    const { of, issues, read } = check([{ ...same, due: '2026-11-20' }], late);
    expect(of('known')).toEqual([2]);
    expect(issues).toEqual([]);
    expect(read.command).toBeNull();
  });

  it('changes the line where the row says otherwise, showing what is there', () => {
    const { read, lines, orders } = check([{ ...same, quantity: '21', 'extra pieces': '5' }]);
    expect(lines).toMatchObject([{ id: '1042/1', quantity: 21, overrun: 5, lengthMm: 2540 }]);
    expect(orders).toEqual([]);
    const [row] = read.reading.rows;
    expect(row).toMatchObject({ state: 'changed', subject: 'line 1042/1' });
    expect(row?.cells.filter(({ was }) => was !== undefined)).toMatchObject([
      { field: 'quantity', read: '21', was: '20' },
      { field: 'extra pieces', read: '5', was: '0' },
    ]);
  });

  it('is refused where it names another customer', () => {
    expect(wrongCell({ ...same, line: '7', customer: 'Others' }).reason).toMatch(
      /is in the shop with customer “Invented Roofing”/,
    );
  });

  it('adds a new line to it without touching the order', () => {
    const { orders, lines } = check([{ ...same, line: '', part: 'flat-strip', customer: '', due: '' }]);
    expect(orders).toEqual([]);
    expect(lines.map((l) => l.id)).toEqual(['1042/3']);
  });

  it('adds nothing to an order that is done', () => {
    const shop = aShop({ order: [anOrder({ status: 'done' })], line: [aLine({ status: 'done' })] });
    expect(wrongCell({ ...same, line: '2' }, shop)).toMatchObject({
      column: 'order',
      reason: expect.stringMatching(/1042 is done/),
    });
  });
});
