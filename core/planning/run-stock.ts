import { lotOf, sameLot, suits, type Lot } from '../material/lot.ts';
import type { Sheet } from '../material/material.ts';
import type { Shop } from '../shop/state.ts';
import { sameMetal, type Metal, type ShearRun } from './runs.ts';

/** How much of each stock is still free: pieces, of a coil stretches. */
export type FreeStock = ReadonlyMap<string, number>;
/** The shop's stock as counted. */
export const freeStock = (shop: Shop): Map<string, number> =>
  new Map(shop.sheet.map((s) => [s.id, s.onHand]));

/**
 * What runs take stock from, one after the other: what was counted, and what comes until each is cut.
 * @returns the free stock, and what adds to it all deliveries that are there for a run: those due by its start, and those
 *   that it was given metal of
 */
export function stockOverTime(shop: Shop) {
  const free = freeStock(shop);
  const coming = shop.delivery.toSorted((a, b) => a.due - b.due);
  const arrive = ({ start, operations }: Pick<ShearRun, 'start' | 'operations'>): void => {
    const awaited = operations.flatMap(({ metal }) => metal?.awaited ?? []);
    const until = Math.max(start, ...awaited.map(({ due }) => due));
    while (coming[0] && coming[0].due <= until) {
      const { sheetId, pieces } = coming.shift()!;
      free.set(sheetId, (free.get(sheetId) ?? 0) + pieces);
    }
  };
  return { free, arrive };
}

/** All stock of a metal, of whichever lot. */
export const stockOf = (shop: Shop, metal: Metal): Sheet[] =>
  shop.sheet.filter((sheet) => sameMetal(sheet, metal));

/** The stock that a run is cut from: of its metal and, where the shop tells lots apart, of its lot. */
export function stockFor(shop: Shop, run: Metal & Pick<ShearRun, 'lot'>): Sheet[] {
  const { lot } = run;
  const { stockKnows: knows } = shop.settings;
  const all = stockOf(shop, run);
  if (lot === null || knows === null) return all;
  const own = (sheet: Sheet): Lot => lotOf(knows, sheet);
  switch (lot.from) {
    case 'stock':
    case 'delivery':
      return all.filter((sheet) => sameLot(own(sheet), lot.lot));
    case 'mixed':
      return all.filter((sheet) => suits(lot.lot, own(sheet)));
    case 'purchase':
      return sizesToBuy(all, lot.lot);
  }
}

/** The sizes in which sheets like that are bought: those without a lot, else any of the size; what is not on record may be so. */
function sizesToBuy(stock: readonly Sheet[], { paint, film }: Lot): Sheet[] {
  const may = stock.filter(
    (sheet) =>
      sheet.form !== 'remnant' &&
      (paint === null || sheet.paint === null || sheet.paint === paint) &&
      (film === null || sheet.film === null || sheet.film === film),
  );
  const sizes = new Map<string, Sheet>();
  for (const sheet of may.toSorted((a, b) => (a.lot < b.lot ? -1 : a.lot > b.lot ? 1 : 0))) {
    const size = `${sheet.form} ${sheet.widthMm} ${sheet.lengthMm} ${sheet.trimMm}`;
    if (!sizes.has(size)) sizes.set(size, sheet);
  }
  return [...sizes.values()];
}
