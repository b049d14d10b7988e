import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { isFact } from '../../../core/edit/facts.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aSheet, aShop, NOW } from '../../support/builders.ts';
import { aDelivery } from '../../support/stock-builders.ts';
import { editOf, madeFrom } from '../../support/edits.ts';

const sheetId = 'galv-24-moss';
const shop = aShop({ sheet: [aSheet({ onHand: 2 })], delivery: [aDelivery({ pieces: 10 })] });
const receive = (pieces: number, deliveryId = 'D1'): Command => ({
  ...{ do: 'stock.receive', sheetId, deliveryId, pieces, at: NOW, note: '' },
});
const refusal = (of: Shop, command: Parameters<typeof madeFrom>[1]): string | null => {
  const edit = applyCommand(of, madeFrom(of, command));
  return edit.ok ? null : edit.issues[0]!.message;
};
const after = (command: Command): Shop => withChanges(shop, editOf(shop, command).changes);

describe('an expected delivery', () => {
  it('that came whole lies in stock and is no longer expected', () => {
    expect(after(receive(10)).sheet[0]!.onHand).toBe(12);
    expect(after(receive(10)).delivery).toEqual([]);
    expect(after(receive(11)).delivery).toEqual([]);
  });

  it('that came in part is still expected for the rest, and the label says so', () => {
    expect(after(receive(4)).delivery).toMatchObject([{ id: 'D1', pieces: 6 }]);
    expect(editOf(shop, receive(4)).label).toBe(
      'Receive 4 of 24 ga Moss green, Galvanized, 48 in × 120 in, delivery D1, 6 still expected',
    );
  });

  it('is received as a fact, and expected again when that is taken back', () => {
    expect(isFact(receive(10))).toBe(true);
    const { changes } = editOf(shop, receive(10));
    expect(withChanges(withChanges(shop, changes), invert(changes))).toEqual(shop);
  });

  it('is received once', () => {
    expect(refusal(after(receive(10)), receive(10))).toBe('There is no delivery D1.');
  });

  it('is of a stock that is there, and never of remnants', () => {
    const save = (own: object): Command => ({
      ...{ do: 'row.save', kind: 'delivery', row: aDelivery({ id: 'D2', ...own }) },
    });
    expect(refusal(shop, save({}))).toBeNull();
    expect(refusal(shop, save({ sheetId: 'gone' }))).toBe('There is no stock gone.');
    const remnants = { ...shop, sheet: [aSheet({ form: 'remnant' })] };
    expect(refusal(remnants, save({}))).toBe('Stock galv-24-moss are remnants, which nobody delivers.');
  });

  it('keeps its stock from being removed', () => {
    expect(refusal(shop, { do: 'row.remove', kind: 'sheet', id: sheetId })).toBe(
      'The sheet size galv-24-moss is used by delivery D1.',
    );
  });
});
