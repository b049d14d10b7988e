import { lotOf, sameLot, suits, type Lot } from '../material/lot.ts';
import type { Sheet } from '../material/material.ts';
import type { Shop } from '../shop/state.ts';
import { sameMetal, type Metal, type ShearRun } from './runs.ts';

/** How much of each stock is still free: pieces, of a coil stretches. */
export type FreeStock = ReadonlyMap<string, number>;
/** The shop's stock as counted. */
export const freeStock = (shop: Shop): Map<string, number> =>
  new Map(shop.sheet.map((s) => [s.id, s.onHand]));

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
