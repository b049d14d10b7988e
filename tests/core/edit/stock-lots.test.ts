import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { NO_LOT } from '../../../core/material/lot.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aSheet, aShop, NOW, someSettings } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

const sheetId = 'galv-24-moss';
const settings = someSettings({ stockKnows: { lot: true, paint: true, film: true } });
const M22 = { lot: 'M-22', paint: 'pvdf', film: 'with' } as const;
const editOf = (shop: Shop, command: Command) => {
  const edit = applyCommand(shop, command);
  if (!edit.ok) throw new Error(edit.issues[0]?.message);
  return edit.value;
};
const done = (shop: Shop, command: Command): Shop => withChanges(shop, editOf(shop, command).changes);
const stockOf = (shop: Shop) => shop.sheet.map(({ id, lot, onHand }) => [id, lot, onHand]);

describe('stock of a lot', () => {
  const shop = aShop({ settings, sheet: [aSheet()] });
  const receive = (pieces: number): Command =>
    ({ do: 'stock.receive', sheetId, lot: M22, pieces, at: NOW, note: '' }) as const;

  it('is a stock of its own, which comes with its first entry and goes when that is undone', () => {
    const edit = editOf(shop, receive(9));
    expect(edit.label).toBe(
      'Receive 9 of 24 ga Moss green, Galvanized, 48 in × 120 in, lot M-22, PVDF, with film',
    );
    const after = withChanges(shop, edit.changes);
    expect(stockOf(after)).toEqual([
      [sheetId, '', 40],
      ['galv-24-moss-m-22-pvdf-with', 'M-22', 9],
    ]);
    expect(after.movement).toMatchObject([{ sheetId: 'galv-24-moss-m-22-pvdf-with', pieces: 9, after: 9 }]);
    expect(withChanges(after, invert(edit.changes))).toEqual(shop);
  });

  it('grows by what comes of the same lot and size, and is counted by its lot too', () => {
    const more = done(done(shop, receive(9)), receive(4));
    expect(stockOf(more)[1]).toEqual(['galv-24-moss-m-22-pvdf-with', 'M-22', 13]);
    const counted = done(more, { do: 'stock.count', sheetId, lot: M22, pieces: 12, at: NOW, note: '' });
    expect(stockOf(counted)[1]).toEqual(['galv-24-moss-m-22-pvdf-with', 'M-22', 12]);
  });

  it('comes from a file of counts, each lot once', () => {
    const counts = [
      { sheetId, lot: M22, pieces: 5 },
      { sheetId, lot: { ...NO_LOT, lot: 'M-23' }, pieces: 7 },
    ];
    const file: Command = { do: 'stock.import', fileName: 'count.csv', counts, at: NOW };
    expect(stockOf(done(shop, file)).map(([, lot, onHand]) => [lot, onHand])).toEqual([
      ['', 40],
      ['M-22', 5],
      ['M-23', 7],
    ]);
    expect(applyCommand(shop, { ...file, counts: [counts[0]!, counts[0]!] }).ok).toBe(false);
  });
});

describe('the sheets of a run, where lots are told apart', () => {
  const sheet = ['A', 'B'].map((lot) => aSheet({ id: `moss-${lot}`, lot, onHand: 9 }));
  const own = { settings, sheet, order: [anOrder()] };
  const shop = aShop({ ...own, line: [aLine({ number: 1, quantity: 16 })] });
  /** Two sheets of each lot, ripped to four strips each. */
  const list = (...lots: string[]) => {
    const named = lots.map((lot, i) => ({ lot, id: 'AB'[i]!, number: i + 1 }));
    return aCutList({
      groups: named.map(({ lot, id }) => aGroup({ id, stockId: `moss-${lot}`, count: 2 })),
      steps: named.map(({ id, number }) =>
        aStep({ number, group: id, stack: id, fed: 2, lines: [{ line: '1042/1', pieces: 8 }] }),
      ) as never,
    });
  };
  const take = (of: ReturnType<typeof list>): Command => ({
    do: 'stock.use',
    list: of,
    machineId: 'S1',
    at: NOW,
  });

  it('leave remnants of their own lot, beside one of the same size of another', () => {
    const other = aSheet({ id: 'rest-B', form: 'remnant', widthMm: 619.2, lot: 'B', onHand: 1 });
    const after = done({ ...shop, sheet: [...shop.sheet, other] }, take(list('A')));
    expect(
      after.sheet.filter(({ form }) => form === 'remnant').map(({ lot, onHand }) => [lot, onHand]),
    ).toEqual([
      ['A', 2],
      ['B', 1],
    ]);
  });

  it('are not issued from several lots for one line, unless it may mix', () => {
    const split = take(list('A', 'B'));
    const refused = applyCommand(shop, split);
    expect(refused.ok ? '' : refused.issues.map(({ message }) => message).join(' ')).toMatch(
      /Line 1042\/1 would be cut from several lots: lot A; lot B\./,
    );
    const mixing = aShop({ ...own, line: [aLine({ number: 1, quantity: 16, mixLots: true })] });
    expect(applyCommand(mixing, split).ok).toBe(true);
  });
});
