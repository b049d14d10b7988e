import type { z } from 'zod';
import type { Command } from '../../../core/edit/command.ts';
import { isNewStock, stockOfLot } from '../../../core/edit/stock-commands.ts';
import { lotFields, NO_LOT } from '../../../core/material/lot.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { delivery, type Delivery } from '../../../core/shop/stock.ts';

/** What the form holds of a delivery: the size as it is bought, and the lot that was said, where the shop keeps lots. */
export const deliveryEntries = delivery.extend(lotFields);
export type DeliveryEntries = z.infer<typeof deliveryEntries>;

/** The next free code, "D2". */
function nextDeliveryId({ delivery: rows }: Shop): string {
  const taken = new Set(rows.map(({ id }) => id));
  let number = 1;
  while (taken.has(`D${number}`)) number += 1;
  return `D${number}`;
}

export const freshDelivery = (shop: Shop): DeliveryEntries => ({
  ...{ id: nextDeliveryId(shop), sheetId: '', pieces: NaN, due: NaN, note: '', revision: 0 },
  ...NO_LOT,
});

/** A delivery as the form shows it. */
export function entriesOf(shop: Shop, row: Delivery): DeliveryEntries {
  const { lot, paint, film } = shop.sheet.find(({ id }) => id === row.sheetId) ?? NO_LOT;
  return { ...row, lot, paint, film };
}

/** Sheets and coils as they are bought, and any lot that is there; nobody delivers remnants. */
export const deliverable = (shop: Shop) => shop.sheet.filter(({ form }) => form !== 'remnant');

/** Keeps a delivery; with it, in the same step, a stock row for a lot that is new to the shop. */
export const saveDelivery =
  (shop: Shop) =>
  ({ lot, paint, film, ...row }: DeliveryEntries): Command => {
    const named = shop.sheet.find(({ id }) => id === row.sheetId);
    const stock = named && shop.settings.stockKnows ? stockOfLot(shop, named, { lot, paint, film }) : named;
    if (!stock || !isNewStock(shop, stock))
      return { do: 'row.save', kind: 'delivery', row: { ...row, sheetId: stock?.id ?? row.sheetId } };
    return {
      do: 'rows.save',
      rows: [
        { kind: 'sheet', row: stock },
        { kind: 'delivery', row: { ...row, sheetId: stock.id } },
      ],
      label: `Expect delivery ${row.id}`,
    };
  };
