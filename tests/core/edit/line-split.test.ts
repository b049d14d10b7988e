import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { piecesThatStay } from '../../../core/edit/line-split.ts';
import { undoIssues } from '../../../core/edit/undo-rules.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aShop, at } from '../../support/builders.ts';
import { after, editOf, issuesOf, refusalOf } from '../../support/edits.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

/** How lines are split is common practice, no source: what is cut stays where it is. */

const due = at('2026-12-09');
const split = (later: number, own: Partial<Extract<Command, { do: 'line.split' }>> = {}) =>
  ({ do: 'line.split', lineId: '1042/1', revision: 0, later, due, ...own }) as const;
const count = (operation: string, good: number): Command => ({
  ...{ do: 'floor.count', operation, good, scrapped: 0 },
});
const quantities = (shop: Shop) => shop.line.map(({ id, quantity }) => [id, quantity]);

const shop = aShop({
  order: [anOrder()],
  line: [aLine({ quantity: 40, overrun: 3, note: 'Film side out' }), aLine({ number: 2 })],
  queue: [
    aQueue({ id: 'B1', operations: ['1042/2:brake', '1042/1:brake'] }),
    aQueue({ operations: ['1042/1:shear', '1042/2:shear'] }),
  ],
});

describe('a line that is split in two, now and later', () => {
  it('keeps the rest of its pieces, and the later ones are a line with the next number and its own date', () => {
    const next = after(shop, split(15));
    const own = { ...shop.line[0]!, revision: 1 };
    expect(next.line.find(({ id }) => id === '1042/1')).toEqual({ ...own, quantity: 25 });
    expect(next.line.find(({ id }) => id === '1042/3')).toEqual({
      ...own,
      ...{ id: '1042/3', number: 3, quantity: 15, overrun: 0, due },
    });
  });

  it('says what it did', () => {
    expect(editOf(shop, split(15)).label).toBe('Split line 1042/1: 25 stay, 15 are line 1042/3');
  });

  it('has the order’s date where that is asked for, so that it moves with the order', () => {
    const next = after(shop, split(15, { due: shop.order[0]!.due }));
    expect(next.line.find(({ id }) => id === '1042/3')?.due).toBeNull();
  });

  it('stands right behind the first in each queue, and nothing else moves', () => {
    expect(after(shop, split(15)).queue.map(({ id, operations }) => [id, operations])).toEqual([
      ['B1', ['1042/2:brake', '1042/1:brake', '1042/3:brake']],
      ['S1', ['1042/1:shear', '1042/3:shear', '1042/2:shear']],
    ]);
  });

  it('is queued no more than the first was', () => {
    expect(editOf({ ...shop, queue: [] }, split(15)).changes.map(({ kind }) => kind)).toEqual([
      'line',
      'line',
    ]);
  });

  it('is one step: taken back, all is as it was', () => {
    const { changes } = editOf(shop, split(15));
    expect(withChanges(withChanges(shop, changes), invert(changes))).toEqual(shop);
  });
});

describe('a line that is begun', () => {
  const begun = after(shop, start('1042/1:shear', 'S1', '07:00'), count('1042/1:shear', 12));

  it('keeps what is cut: up to 28 of 40 can be made later when 12 are sheared', () => {
    expect(piecesThatStay(begun, begun.line[0]!)).toBe(12);
    expect(quantities(after(begun, split(28)))).toEqual([
      ['1042/1', 12],
      ['1042/2', shop.line[1]!.quantity],
      ['1042/3', 28],
    ]);
    expect(refusalOf(begun, split(29))).toBe(
      'Of the 40 pieces of line 1042/1 1 to 28 can be made later, since 12 are cut or on issued sheets and stay with it. Type a figure between these.',
    );
  });

  it('leaves every fact where it was, and each piece is asked for once', () => {
    const next = after(begun, split(28));
    expect(next.record).toEqual(begun.record);
    const ended = after(next, finish('1042/1:shear', '07:30', 0));
    expect(quantities(ended)).toEqual(quantities(next));
    const sheared = operationsOf(ended).operations.filter(({ stage }) => stage === 'shear');
    expect(sheared.map(({ id, quantity }) => [id, quantity])).toContainEqual(['1042/3:shear', 28]);
    expect(sheared.map(({ id }) => id)).not.toContain('1042/1:shear');
  });

  it('can be made one again as long as none of its steps is done, though work goes on', () => {
    const { changes } = editOf(begun, split(20));
    const next = after(withChanges(begun, changes), count('1042/1:shear', 4));
    expect(undoIssues(next, invert(changes))).toEqual([]);
    const done = after(next, finish('1042/1:shear', '07:30', 4));
    expect(undoIssues(done, invert(changes)).map(({ message }) => message)).toEqual([
      'Work on line 1042/1 has started meanwhile.',
    ]);
  });

  it('keeps the blanks of issued sheets', () => {
    const issued: Shop = {
      ...shop,
      cutList: [
        aCutList({
          taken: monday('06:00'),
          lines: ['1042/1'],
          groups: [aGroup()],
          steps: [aStep({ lines: [{ line: '1042/1', pieces: 30 }] })],
        }),
      ],
    };
    expect(piecesThatStay(issued, issued.line[0]!)).toBe(30);
  });

  it('stays one once a step is done: that was done for all of it', () => {
    const sheared = after(shop, start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '07:30', 40));
    expect(refusalOf(sheared, split(15))).toBe(
      'Line 1042/1 is sheared already, so it stays one line. To do a part of it later, pause the work at its machine and suspend it.',
    );
  });
});

describe('a split is refused', () => {
  it('for all of a line, or for a line of one piece', () => {
    expect(refusalOf(shop, split(40))).toMatch(
      /^Of the 40 pieces of line 1042\/1 1 to 39 can be made later\./,
    );
    const one = aShop({ order: [anOrder()], line: [aLine({ quantity: 1 })] });
    expect(refusalOf(one, split(1))).toMatch(/^Line 1042\/1 is one piece\./);
  });

  it('for a line that is closed', () => {
    const cancelled = aShop({
      order: [anOrder({ status: 'cancelled', closedAt: monday('06:00') })],
      line: [aLine()],
    });
    expect(refusalOf(cancelled, split(2))).toBe('Line 1042/1 or its work order is cancelled. Open it first.');
  });

  it('when someone else changed the line meanwhile, and shows theirs', () => {
    const [issue] = issuesOf(shop, split(15, { revision: 7 }));
    expect(issue).toMatchObject({ field: 'revision', message: 'The line 1042/1 was changed meanwhile.' });
  });

  it('where the later pieces would have to start after they are due', () => {
    const late = aShop({
      order: [anOrder()],
      line: [aLine({ quantity: 40, release: at('2026-12-02'), due: at('2026-12-10') })],
    });
    expect(refusalOf(late, split(15, { due: at('2026-12-01') }))).toMatch(
      /“Not before”.* is not before the due date/,
    );
  });
});
