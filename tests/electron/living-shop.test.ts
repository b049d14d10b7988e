import { describe, expect, it } from 'vitest';
import type { Push } from '../../core/contract/push.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant } from '../../core/units/brand.ts';
import { editService } from '../../electron/service/edit.ts';
import { aLine, aRecord, aShop, anOrder, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { keptPushes, livingIn, refusalOf, shopIn, storeWith } from './support.ts';
import { madeFrom } from '../support/edits.ts';

const DAY = 86_400;
const LONG_AGO = instant(NOW - 30 * DAY);

function start(shop: Shop, now: { at: number } = { at: NOW }) {
  const store = storeWith(shop);
  const pushes = keptPushes();
  const clock = { now: () => instant(now.at), fixed: false };
  const living = livingIn(store, pushes, clock);
  return { store, pushes, living, edit: editService(living, clock), now };
}
const changesOf = (pushes: readonly Push[]) =>
  pushes.flatMap((push) => (push.kind === 'changes' ? [push] : []));

/** An order of last month that is done, beside an open one. */
const withArchive = () =>
  aShop({
    order: [
      anOrder(),
      anOrder({ id: '900', status: 'done', closedAt: LONG_AGO }),
      anOrder({ id: '901', status: 'cancelled', closedAt: LONG_AGO }),
    ],
    line: [aLine(), aLine({ orderId: '900', status: 'done' })],
    record: [
      aRecord({ id: '900/1:shear', start: LONG_AGO - 3600, end: LONG_AGO }),
      aRecord({ id: '800/4:shear', start: LONG_AGO - 7200, end: LONG_AGO - 3600 }),
    ],
  });

describe('the living shop', () => {
  it('is after any commands what the file holds, and what a screen makes of the pushes', () => {
    const { living, edit, pushes, store } = start(anEverythingShop(), { at: NOW + 7200 });
    const first = living.read();
    edit.apply(madeFrom(living.shop, { do: 'operation.pin', operations: ['1042/1:brake'] }));
    edit.apply({ do: 'floor.resume', operation: '1042/1:shear', at: NOW + 6000 });
    edit.apply(madeFrom(living.shop, { do: 'order.remove', orderId: '1043' }));
    edit.undo();
    const told = changesOf(pushes.sent);
    expect(told.map(({ revision }) => revision)).toEqual([2, 3, 4, 5]);
    expect(new Set(told.map(({ epoch }) => epoch))).toEqual(new Set([first.epoch]));
    const screen = told.reduce((shop, { changes }) => withChanges(shop, changes!), first.shop);
    expect(screen).toEqual(living.shop);
    expect(shopIn(store)).toEqual(living.shop);
  });

  it('stays as it was when a command is refused, and no screen is told anything', () => {
    const { living, edit, pushes } = start(aShop());
    const before = living.read();
    refusalOf(() => edit.apply(madeFrom(living.shop, { do: 'row.remove', kind: 'part', id: 'corner' })));
    expect(living.read()).toEqual(before);
    expect(living.shop).toBe(before.shop);
    expect(pushes.sent).toEqual([]);
  });

  it('holds orders closed in the last days, and not those of long ago', () => {
    const { living } = start(withArchive());
    expect(living.shop.order.map(({ id }) => id)).toEqual(['1042']);
    expect(living.shop.line.map(({ id }) => id)).toEqual(['1042/1']);
    // What the machine finished last says since when it has been free.
    expect(living.shop.record.map(({ id }) => id)).toEqual(['900/1:shear']);
  });

  it('lets go of an order a week after it was closed, and has the screens read again', () => {
    const closed = anOrder({ id: '900', status: 'cancelled', closedAt: instant(NOW - 3 * DAY) });
    const { living, pushes, now } = start(aShop({ order: [closed], line: [aLine({ orderId: '900' })] }));
    expect(living.shop.order).toHaveLength(1);
    now.at = NOW + 5 * DAY;
    expect(living.shop.order).toEqual([]);
    expect(changesOf(pushes.sent)).toMatchObject([{ revision: 2, changes: null }]);
  });
});

describe('a number that was used before', () => {
  it('is refused for a new order while the old one is in the archive', () => {
    const { edit } = start(withArchive());
    const order = anOrder({ id: '901' });
    const refusal = refusalOf(() =>
      edit.apply({
        do: 'orders.import',
        fileName: 'a.csv',
        orders: [order],
        lines: [aLine({ orderId: '901' })],
      }),
    );
    expect(refusal.message).toMatch(/Work order 901 was used before; it is in the archive/);
  });

  it('is refused for a line that would inherit the work of one that is gone', () => {
    const { edit } = start(withArchive());
    const line = aLine({ orderId: '800', number: 4 });
    const refusal = refusalOf(() =>
      edit.apply({ do: 'orders.import', fileName: 'a.csv', orders: [anOrder({ id: '800' })], lines: [line] }),
    );
    expect(refusal.message).toMatch(/Line 800\/4 has finished work on record/);
  });
});
