import { lotOf, sameLot, type Lot, type StockKnows } from '../material/lot.ts';
import type { Shop } from '../shop/state.ts';
import type { Delivery } from '../shop/stock.ts';
import { cutFrom, lotSheets, putAway, wholeSheets, type LotSheets } from './lot-sheets.ts';
import type { Awaited } from './metal-cover.ts';
import { sameMetal, type Metal } from './runs.ts';

/** What lies there, or comes by one delivery, of one lot. */
interface Part {
  readonly delivery: Delivery | null;
  readonly sheets: LotSheets;
}

/** Sheets of one metal and lot: what lies there, then what is expected, the soonest first. */
export interface Pool {
  readonly lot: Lot;
  readonly parts: readonly Part[];
}

/** All sheets of a metal that are there or expected, lot by lot as far as the shop keeps them. */
export function poolsOf(shop: Shop, knows: StockKnows, metal: Metal): Pool[] {
  const rows = shop.sheet.filter((sheet) => sameMetal(sheet, metal));
  const lots: Lot[] = [];
  for (const row of rows) {
    const lot = lotOf(knows, row);
    if (!lots.some((one) => sameLot(one, lot))) lots.push(lot);
  }
  return lots.map((lot) => {
    const own = rows.filter((row) => sameLot(lotOf(knows, row), lot));
    const coming = shop.delivery.flatMap((delivery): Part[] => {
      const row = own.find(({ id }) => id === delivery.sheetId);
      return row ? [{ delivery, sheets: lotSheets(lot, [{ ...row, onHand: delivery.pieces }]) }] : [];
    });
    const here: Part = { delivery: null, sheets: lotSheets(lot, own) };
    return { lot, parts: [here, ...coming.sort(bySoonest)] };
  });
}

const bySoonest = ({ delivery: a }: Part, { delivery: b }: Part): number =>
  a === null || b === null
    ? Number(a !== null) - Number(b !== null)
    : a.due - b.due || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** What lies there of a pool. */
export const onHandOf = ({ parts }: Pool): LotSheets => (parts[0] as Part).sheets;

/**
 * So many blanks cut from pools: first from what lies there, then delivery by delivery.
 * @param isOwn those that they may be cut from
 * @returns all pools, less that, and what the blanks are cut from
 */
export function drawFrom(
  pools: readonly Pool[],
  blank: { readonly girthMm: number; readonly lengthMm: number },
  pieces: number,
  isOwn: (pool: Pool) => boolean = () => true,
): { left: Pool[]; missing: number; awaited: Awaited[] } {
  const left = pools.map(({ lot, parts }) => ({ lot, parts: [...parts] }));
  const all = left.filter(isOwn).flatMap(({ parts }) => parts.map((part, at) => ({ part, parts, at })));
  all.sort((a, b) => bySoonest(a.part, b.part));
  const awaited: Awaited[] = [];
  let missing = pieces;
  for (const { part, parts, at } of all) {
    if (missing === 0) break;
    const cut = cutFrom(part.sheets, blank, missing);
    if (cut.missing === missing) continue;
    missing = cut.missing;
    parts[at] = { ...part, sheets: cut.left };
    if (!part.delivery) continue;
    const { id, sheetId, due } = part.delivery;
    const sheets = wholeSheets(part.sheets) - wholeSheets(cut.left);
    awaited.push({ deliveryId: id, sheetId, due, sheets });
  }
  return { left, missing, awaited };
}

/** What is left when the next line is of another run. */
export const poolPutAway = ({ lot, parts }: Pool): Pool => ({
  lot,
  parts: parts.map((part) => ({ ...part, sheets: putAway(part.sheets) })),
});
