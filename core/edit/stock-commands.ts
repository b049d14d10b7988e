import { freeCode } from '../code.ts';
import { lotOf, lotWords, NO_LOT, sameLot, type Lot } from '../material/lot.ts';
import { sameMetal } from '../planning/runs.ts';
import { metalName } from '../shop/metal-name.ts';
import type { Sheet } from '../material/material.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { Movement } from '../shop/stock.ts';
import { formatCutSize } from '../units/length.ts';
import type { Command } from './command.ts';
import { byDelivery } from './delivery-rules.ts';
import { change, type RowChange, type Edit } from '../shop/row-change.ts';
import { grouped } from '../grouped.ts';

type StockCommand = Extract<Command, { do: 'stock.receive' | 'stock.count' | 'stock.correct' }>;
/** What an entry says of itself. */
export type Happening = Pick<Movement, 'at' | 'what' | 'note'>;

const MOST = 1_000_000;

/** "24 ga Moss, galvanized, 48 in × 120 in, lot M-2231": stock as people say it. */
export function stockName(shop: Shop, sheet: Sheet): string {
  const size = formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings);
  const lot = shop.settings.stockKnows === null ? '' : lotWords(lotOf(shop.settings.stockKnows, sheet));
  return [metalName(shop, sheet), size, lot].filter(Boolean).join(', ');
}

/**
 * The stock like another but of a lot: the one that is there, else a row for it with nothing on hand, which is kept with
 * the first entry of its history.
 * @param lot left out: the stock itself
 */
export function stockOfLot(shop: Shop, like: Sheet, lot: Lot | undefined): Sheet {
  if (lot === undefined || sameLot(lot, like)) return like;
  const known = shop.sheet.find(
    (one) => sameSheet({ ...one, ...NO_LOT }, { ...like, ...NO_LOT }) && sameLot(one, lot),
  );
  if (known) return known;
  const name = [like.id, ...[lot.lot, lot.paint, lot.film].filter(Boolean)].join('-');
  const id = freeCode(
    name,
    shop.sheet.map((one) => one.id),
  );
  return { ...like, ...lot, id, onHand: 0, revision: 0 };
}

const sameSheet = (a: Sheet, b: Sheet): boolean =>
  sameMetal(a, b) &&
  a.form === b.form &&
  a.widthMm === b.widthMm &&
  a.lengthMm === b.lengthMm &&
  a.trimMm === b.trimMm;

/**
 * Stock that came, was counted, or is corrected by hand: one entry in its history.
 * @returns the edit; or why not: no such stock, or fewer than none left
 */
export function moveStock(shop: Shop, command: StockCommand): Result<Edit> {
  const named = shop.sheet.find((s) => s.id === command.sheetId);
  if (!named) return noStock(command.sheetId);
  const sheet = command.do === 'stock.correct' ? named : stockOfLot(shop, named, command.lot);
  const isNew = isNewStock(shop, sheet);
  const name = stockName(shop, sheet);
  const { at, note } = command;
  switch (command.do) {
    case 'stock.receive': {
      const label = `Receive ${command.pieces} of ${name}`;
      const came = moved(sheet, command.pieces, { at, note, what: 'received' }, label, isNew);
      return came.ok && command.deliveryId !== undefined
        ? byDelivery(shop, came.value, command.deliveryId, command.pieces)
        : came;
    }
    case 'stock.count': {
      const by = command.pieces - sheet.onHand;
      const label = `Set count of ${name} to ${command.pieces}`;
      return moved(sheet, by, { at, note, what: 'counted' }, label, isNew);
    }
    case 'stock.correct':
      return moved(
        sheet,
        command.by,
        { at, note, what: 'corrected' },
        command.by > 0 ? `Add ${command.by} to ${name}` : `Subtract ${-command.by} from ${name}`,
      );
  }
}

/** Whether a stock is none of the shop's yet. */
export const isNewStock = (shop: Shop, { id }: Sheet): boolean => shop.sheet.every((one) => one.id !== id);

/** So many pieces more or less, as one entry; refused below none. @param isNew the stock's row comes with it */
export function moved(
  sheet: Sheet,
  by: number,
  happening: Happening,
  label: string,
  isNew = false,
): Result<Edit> {
  const after = sheet.onHand + by;
  if (after >= 0 && after <= MOST) {
    const changes =
      by === 0 && happening.what !== 'counted'
        ? []
        : entry(isNew ? null : sheet, { ...sheet, onHand: after }, by, happening);
    return ok({ label, changes });
  }
  return err(
    issue(
      `stock ${sheet.id}`,
      'pieces',
      `Stock ${sheet.id} has ${sheet.onHand} on hand; ${after} cannot be.`,
      after < 0
        ? 'Set its count, or receive what is missing, first.'
        : `At most ${grouped(MOST)} can be kept.`,
    ),
  );
}

/** A stock's row with its entry in the history. */
export function entry(before: Sheet | null, after: Sheet, pieces: number, happening: Happening): RowChange[] {
  const saved = change('sheet', before, after);
  const id = `${after.id}.${saved.after?.revision ?? 0}`;
  const row: Movement = { id, sheetId: after.id, pieces, after: after.onHand, revision: 0, ...happening };
  return [saved, change('movement', null, row)];
}

export const noStock = (id: string): Result<never> =>
  err(issue(`stock ${id}`, 'stock', `There is no stock ${id}.`, 'It may have been removed already.'));
