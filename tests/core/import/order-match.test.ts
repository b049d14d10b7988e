import { describe, expect, it } from 'vitest';
import { aLine, anOrder, aShop, at } from '../../support/builders.ts';
import { check, wrongCell, type Row } from './order-table.ts';

describe('rows of one order', () => {
  it('need the order’s own columns once', () => {
    const { orders, lines, ready } = check([
      {},
      { line: '2', customer: '', 'not before': '', due: '', importance: '', rush: '', note: '' },
    ]);
    expect(ready).toEqual([2, 3]);
    expect(orders).toHaveLength(1);
    expect(lines.map((l) => l.id)).toEqual(['2001/1', '2001/2']);
  });

  it('must agree about the order', () => {
    const { issues, ready } = check([{}, { line: '2', due: '2026-12-11 14:00' }]);
    expect(ready).toEqual([2]);
    expect(issues).toEqual([
      {
        row: 3,
        column: 'due',
        value: '2026-12-11 14:00',
        reason: expect.stringMatching(/has due 2026-12-10 14:00/),
      },
    ]);
  });

  it('may have no line numbers: each takes the next free one', () => {
    const { lines } = check([{ line: '' }, { line: '2' }, { line: '' }, { line: '' }]);
    expect(lines.map((l) => l.number)).toEqual([1, 2, 3, 4]);
  });

  it('may not have one line number twice', () => {
    const { issues, ready } = check([{}, {}]);
    expect(ready).toEqual([2]);
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
    expect(check([{ ...same, due: '2026-11-20' }], late)).toMatchObject({
      known: [2],
      ready: [],
      issues: [],
      orders: [],
      lines: [],
    });
  });

  it('is refused where the line differs, naming what is there', () => {
    expect(wrongCell({ ...same, quantity: '21' })).toMatchObject({
      column: 'quantity',
      reason: expect.stringMatching(/Line 1042\/1 is in the shop with quantity 20/),
    });
  });

  it('is refused where it accepts another number of extra pieces than the line', () => {
    expect(wrongCell({ ...same, 'extra pieces': '5' })).toMatchObject({
      column: 'extra pieces',
      reason: expect.stringMatching(/is in the shop with extra pieces 0/),
    });
  });

  it('is refused where the order differs', () => {
    expect(wrongCell({ ...same, line: '7', customer: 'Others' }).reason).toMatch(
      /is in the shop with customer “Invented Roofing”/,
    );
  });

  it('adds a new line to it without touching the order', () => {
    const { orders, lines } = check([{ ...same, line: '', customer: '', due: '', quantity: '7' }]);
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
