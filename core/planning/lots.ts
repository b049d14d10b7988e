import { lotKey, lotOf, sameLot, suits, type Lot, type StockKnows } from '../material/lot.ts';
import { countCuts } from '../estimate/shear.ts';
import type { Queues } from '../schedule/problem.ts';
import type { Shop } from '../shop/state.ts';
import { piecesLeft } from './cut-lists.ts';
import type { LineLot } from './line-lot.ts';
import { cutFrom, lotSheets, putAway, wholeArea, wholeSheets, type LotSheets } from './lot-sheets.ts';
import type { ShopOperation } from './operations.ts';
import type { Metal } from './runs.ts';

/**
 * The lot that each line is cut from, where the shop tells sheets of one metal apart: one lot with enough sheets for all
 * its blanks, given out in the order of the plan. Lines of one order are given the same lot where it suffices; a line
 * whose sheets were issued in part stays with their lot. Where no lot on hand suffices the line is cut from several if the
 * shop lets it, else its sheets are bought, all of one lot, and it is told what there was.
 *
 * Like listed times this depends on the stored queues, stock and lists, never on times, so that decoding a plan cannot
 * change it. In a shop that keeps no lots all operations stay as they are.
 * @returns the same operations in the same order, each with its line's lot
 */
export function withLots(
  shop: Shop,
  operations: readonly ShopOperation[],
  queues: Queues,
): readonly ShopOperation[] {
  const { stockKnows: knows } = shop.settings;
  if (knows === null) return operations;
  const given = new Giving(shop, knows, operations).give(inOrder(shop, operations, queues));
  return operations.map((operation) => ({ ...operation, lot: given.get(operation.line.id) ?? null }));
}

/** Shear operations in the order of the plan: of several shears the one with the least estimated work before it. */
function* inOrder(shop: Shop, operations: readonly ShopOperation[], queues: Queues) {
  const byId = new Map(operations.map((operation) => [operation.id, operation]));
  const shears = shop.machine
    .filter(({ stage }) => stage === 'shear')
    .map(({ id }) => ({
      id,
      queue: (queues[id] ?? []).flatMap((o) => byId.get(o) ?? []),
      at: 0,
      seconds: 0,
    }));
  for (;;) {
    const waiting = shears.filter(({ queue, at }) => at < queue.length);
    if (waiting.length === 0) return;
    const next = waiting.reduce((least, one) => (one.seconds < least.seconds ? one : least));
    const operation = next.queue[next.at] as ShopOperation;
    next.at += 1;
    next.seconds += operation.machines.find(({ id }) => id === next.id)?.seconds ?? 0;
    yield { shear: next.id, operation };
  }
}

const metalKey = ({ materialId, gauge, colourId }: Metal): string => [materialId, gauge, colourId].join(' ');

/** Gives the lots of a shop out, line by line. */
class Giving {
  private readonly shop: Shop;
  private readonly knows: StockKnows;
  private readonly operations: readonly ShopOperation[];
  /** What is left of each lot, by metal. */
  private readonly left = new Map<string, LotSheets[]>();
  /** Lots that lines of an order have by now, by order and metal. */
  private readonly ofOrder = new Map<string, Lot[]>();
  private readonly given = new Map<string, LineLot>();
  private readonly issued: ReadonlyMap<string, readonly Lot[]>;

  constructor(shop: Shop, knows: StockKnows, operations: readonly ShopOperation[]) {
    this.shop = shop;
    this.knows = knows;
    this.operations = operations;
    this.issued = issuedLots(shop, knows);
    for (const line of shop.line) for (const lot of this.issued.get(line.id) ?? []) this.remember(line, lot);
  }

  give(order: Iterable<{ shear: string; operation: ShopOperation }>): Map<string, LineLot> {
    const { given } = this;
    const lastOn = new Map<string, string>();
    let before = { cut: '', metal: '' };
    for (const { shear, operation } of order) {
      const { line } = operation;
      const lot = this.lotFor(operation, lastOn.get(shear) ?? '');
      const now = `${metalKey(line)} ${lot.from} ${lotKey(lot.lot)}`;
      if (before.cut !== `${shear} ${now}`) this.putAway(before.metal);
      before = { cut: `${shear} ${now}`, metal: metalKey(line) };
      lastOn.set(shear, now);
      this.take(operation, lot);
      given.set(line.id, lot);
      if (lot.from === 'stock') this.remember(line, lot.lot);
    }
    // Of lines that are sheared already only what was issued is known.
    for (const { line } of this.operations) {
      const [lot, ...others] = this.issued.get(line.id) ?? [];
      if (lot && others.length === 0 && !given.has(line.id))
        given.set(line.id, { from: 'stock', lot, short: null });
    }
    return given;
  }

  private lotsOf(line: ShopOperation['line']): LotSheets[] {
    const key = metalKey(line);
    const known = this.left.get(key);
    if (known) return known;
    const rows = this.shop.sheet.filter((sheet) => metalKey(sheet) === key);
    const keys = new Map(rows.map((row) => [lotKey(lotOf(this.knows, row)), lotOf(this.knows, row)]));
    const lots = [...keys].map(([, lot]) =>
      lotSheets(
        lot,
        rows.filter((row) => sameLot(lotOf(this.knows, row), lot)),
      ),
    );
    this.left.set(key, lots);
    return lots;
  }

  /** @param last what the shear was cutting before */
  private lotFor(operation: ShopOperation, last: string): LineLot {
    const { line, blank } = operation;
    const pieces = piecesLeft(this.shop, operation);
    const issued = this.issued.get(line.id) ?? [];
    const asked = lotOf(this.knows, line);
    const all = this.lotsOf(line);
    const fitting = all.filter(({ lot }) =>
      issued.length > 0 ? issued.some((one) => sameLot(one, lot)) : suits(asked, lot),
    );
    const enough =
      issued.length > 1 ? [] : fitting.filter((lot) => cutFrom(lot, blank, pieces).missing === 0);
    const [best] = this.ranked(enough, operation, last);
    if (best) return { from: 'stock', lot: best.lot, short: null };
    const lot = issued.length === 1 ? (issued[0] as Lot) : asked;
    // The lot that it names was to be had alone; where that cannot be, the others are as good.
    if (line.mixLots) return { from: 'mixed', lot: { ...asked, lot: '' }, short: null };
    const there = fitting.filter((one) => wholeSheets(one) > 0);
    const short =
      there.length === 0
        ? null
        : {
            needs: this.sheetsFor(operation, pieces),
            lots: there.map((one) => ({ lot: one.lot, sheets: wholeSheets(one) })),
          };
    return { from: 'purchase', lot, short };
  }

  /** Lots that each have enough for a line, the best first. */
  private ranked(lots: readonly LotSheets[], { line }: ShopOperation, last: string): readonly LotSheets[] {
    if (lots.length < 2) return lots;
    const ofOrder = this.ofOrder.get(`${line.orderId} ${metalKey(line)}`) ?? [];
    const rank = (lot: LotSheets): readonly number[] => [
      ofOrder.some((one) => sameLot(one, lot.lot)) ? 0 : 1,
      this.hasAllOfOrder(lot, line) ? 0 : 1,
      last === `${metalKey(line)} stock ${lotKey(lot.lot)}` ? 0 : 1,
      lot.lot.lot === '' ? 1 : 0,
      wholeArea(lot),
    ];
    return lots
      .map((lot) => ({ lot, rank: rank(lot), key: lotKey(lot.lot) }))
      .sort((a, b) => {
        const at = a.rank.findIndex((one, i) => one !== b.rank[i]);
        return at >= 0 ? (a.rank[at] ?? 0) - (b.rank[at] ?? 0) : a.key < b.key ? -1 : 1;
      })
      .map(({ lot }) => lot);
  }

  /** Whether a lot has enough for all lines of an order in its metal that are still to be sheared. */
  private hasAllOfOrder(lot: LotSheets, line: ShopOperation['line']): boolean {
    let left = lot;
    for (const operation of this.operations) {
      const other = operation.line;
      if (operation.stage !== 'shear' || other.orderId !== line.orderId || this.given.has(other.id)) continue;
      if (metalKey(other) !== metalKey(line)) continue;
      const cut = cutFrom(left, operation.blank, piecesLeft(this.shop, operation));
      if (cut.missing > 0) return false;
      left = cut.left;
    }
    return true;
  }

  private take(operation: ShopOperation, { from, lot }: LineLot): void {
    if (from === 'purchase') return;
    let pieces = piecesLeft(this.shop, operation);
    const key = metalKey(operation.line);
    const lots = this.lotsOf(operation.line).map((one) => {
      if (from === 'stock' ? !sameLot(one.lot, lot) : !suits(lot, one.lot)) return one;
      const cut = cutFrom(one, operation.blank, pieces);
      pieces = cut.missing;
      return cut.left;
    });
    this.left.set(key, lots);
  }

  /** A shear goes over to other sheets: what it has cut into of a metal is no use to a later run. */
  private putAway(metal: string): void {
    const lots = this.left.get(metal);
    if (lots) this.left.set(metal, lots.map(putAway));
  }

  private remember(line: ShopOperation['line'], lot: Lot): void {
    const key = `${line.orderId} ${metalKey(line)}`;
    const known = this.ofOrder.get(key) ?? [];
    if (!known.some((one) => sameLot(one, lot))) this.ofOrder.set(key, [...known, lot]);
  }

  private sheetsFor({ blank, sheet }: ShopOperation, quantity: number): number {
    const counted = countCuts({ blank, quantity, sheet, units: this.shop.settings });
    return counted.ok ? counted.value.sheets : 0;
  }
}

/** The lots of the sheets that were issued, by line; of stock that has gone none is known. */
function issuedLots(shop: Shop, knows: StockKnows): Map<string, readonly Lot[]> {
  const issued = new Map<string, readonly Lot[]>();
  for (const { taken, lines, groups } of shop.cutList) {
    if (taken === null) continue;
    const lots = groups.flatMap(({ stockId }) => {
      const sheet = shop.sheet.find(({ id }) => id === stockId);
      return sheet ? [lotOf(knows, sheet)] : [];
    });
    for (const line of lines) {
      const known = [...(issued.get(line) ?? [])];
      for (const lot of lots) if (!known.some((one) => sameLot(one, lot))) known.push(lot);
      issued.set(line, known);
    }
  }
  return issued;
}
