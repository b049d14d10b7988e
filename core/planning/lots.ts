import { lotKey, lotOf, sameLot, suits, type Lot, type StockKnows } from '../material/lot.ts';
import { countCuts } from '../estimate/shear.ts';
import type { Queues } from '../schedule/problem.ts';
import { lineOfOperation } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { piecesLeft } from './cut-lists.ts';
import type { LineLot } from './line-lot.ts';
import { wholeArea, wholeSheets } from './lot-sheets.ts';
import type { MetalCover } from './metal-cover.ts';
import { drawFrom, onHandOf, poolPutAway, poolsOf, type Pool } from './metal-pools.ts';
import type { ShopOperation } from './operations.ts';
import type { Metal } from './runs.ts';

/** What a shop knows that tells no sheets of one metal apart. */
const NOTHING: StockKnows = { lot: false, paint: false, film: false };

/** What a line is cut from. */
interface LineMetal {
  readonly lot: LineLot;
  readonly metal: MetalCover;
}

/**
 * What each line is cut from: of the stock on hand and the expected deliveries, given out in the order of the plan, so that
 * who comes first has what is there. Where the shop tells sheets of one metal apart a line gets one lot with enough sheets
 * for all its blanks. Lines of one order are given the same lot where it suffices; a line whose sheets were issued in part
 * stays with their lot. What is on hand comes before what is expected, and of that the soonest. Where no lot suffices the
 * line is cut from several if the shop lets it, else its sheets are bought, all of one lot, and it is told what there was.
 *
 * Like listed times this depends on the stored queues, stock, deliveries and lists, never on times, so that decoding a plan
 * cannot change it. Where there is metal for all lines, putting one shear's queue into another order never makes a start later
 * than it was decoded with what was given out before: what a line was cut from there has come by its start, and those ahead
 * of it took theirs. So a plan that the search found holds when it is stored.
 * In a shop that keeps no lots and expects no deliveries all operations stay as they are.
 * @param first lines that are given theirs before all others
 * @returns the same operations in the same order, each with its line's lot and what it waits for
 */
export function withMetal(
  shop: Shop,
  operations: readonly ShopOperation[],
  queues: Queues,
  first: readonly string[] = [],
): readonly ShopOperation[] {
  const keepsLots = shop.settings.stockKnows !== null;
  if (!keepsLots && shop.delivery.length === 0) return operations;
  const given = metalOf(shop, operations, withAhead(queues, first));
  return operations.map((operation) => {
    const own = given.get(operation.line.id);
    return { ...operation, lot: keepsLots ? (own?.lot ?? null) : null, metal: own?.metal ?? null };
  });
}

/** The same by line id, of lines that are still to be sheared, whatever the shop keeps. */
export const metalOf = (
  shop: Shop,
  operations: readonly ShopOperation[],
  queues: Queues,
): ReadonlyMap<string, LineMetal> =>
  new Giving(shop, shop.settings.stockKnows ?? NOTHING, operations).give(inOrder(shop, operations, queues));

/** The queues with the operations of some lines ahead of all others. */
function withAhead(queues: Queues, lines: readonly string[]): Queues {
  if (lines.length === 0) return queues;
  const isAhead = (operation: string): boolean => lines.includes(lineOfOperation(operation));
  return Object.fromEntries(
    Object.entries(queues).map(([machine, ids]) => [
      machine,
      [...ids.filter(isAhead), ...ids.filter((id) => !isAhead(id))],
    ]),
  );
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

/** What lies there of a metal and is of one run, as a text. */
const cutOf = (metal: Metal, { from, lot }: Pick<LineLot, 'from' | 'lot'>): string =>
  `${metalKey(metal)} ${from} ${lotKey(lot)}`;

const isOneLot = ({ from }: LineLot): boolean => from === 'stock' || from === 'delivery';

const ALL_HERE: MetalCover = { arrival: null, awaited: [], missing: 0 };

/** Gives the metal of a shop out, line by line. */
class Giving {
  private readonly shop: Shop;
  private readonly knows: StockKnows;
  private readonly operations: readonly ShopOperation[];
  /** What is left of each lot, by metal. */
  private readonly left = new Map<string, Pool[]>();
  /** Lots that lines of an order have by now, by order and metal. */
  private readonly ofOrder = new Map<string, Lot[]>();
  private readonly given = new Map<string, LineMetal>();
  private readonly issued: ReadonlyMap<string, readonly Lot[]>;

  constructor(shop: Shop, knows: StockKnows, operations: readonly ShopOperation[]) {
    this.shop = shop;
    this.knows = knows;
    this.operations = operations;
    this.issued = issuedLots(shop, knows);
    for (const line of shop.line) for (const lot of this.issued.get(line.id) ?? []) this.remember(line, lot);
  }

  give(order: Iterable<{ shear: string; operation: ShopOperation }>): Map<string, LineMetal> {
    const { given } = this;
    const lastOn = new Map<string, string>();
    let before = { cut: '', metal: '' };
    for (const { shear, operation } of order) {
      const { line } = operation;
      const lot = this.lotFor(operation, lastOn.get(shear) ?? '');
      const now = cutOf(line, lot);
      if (before.cut !== `${shear} ${now}`) this.putAway(before.metal);
      before = { cut: `${shear} ${now}`, metal: metalKey(line) };
      lastOn.set(shear, now);
      given.set(line.id, { lot, metal: this.take(operation, lot) });
      if (isOneLot(lot)) this.remember(line, lot.lot);
    }
    // Of lines that are sheared already only what was issued is known.
    for (const { line } of this.operations) {
      const [lot, ...others] = this.issued.get(line.id) ?? [];
      if (lot && others.length === 0 && !given.has(line.id))
        given.set(line.id, { lot: { from: 'stock', lot, short: null }, metal: ALL_HERE });
    }
    return given;
  }

  private poolsOf(line: ShopOperation['line']): Pool[] {
    const key = metalKey(line);
    const known = this.left.get(key);
    if (known) return known;
    const pools = poolsOf(this.shop, this.knows, line);
    this.left.set(key, pools);
    return pools;
  }

  /** @param last what the shear was cutting before */
  private lotFor(operation: ShopOperation, last: string): LineLot {
    const { line, blank } = operation;
    const asked = lotOf(this.knows, line);
    const anyOf = { from: 'mixed', lot: { ...asked, lot: '' }, short: null } as const;
    if (this.knows === NOTHING) return anyOf;
    const pieces = piecesLeft(this.shop, operation);
    const issued = this.issued.get(line.id) ?? [];
    const fitting = this.poolsOf(line).filter(({ lot }) =>
      issued.length > 0 ? issued.some((one) => sameLot(one, lot)) : suits(asked, lot),
    );
    const enough = (issued.length > 1 ? [] : fitting).flatMap((pool) => {
      const { missing, awaited } = drawFrom([pool], blank, pieces);
      return missing > 0 ? [] : [{ pool, due: awaited.at(-1)?.due ?? null }];
    });
    const here = enough.filter(({ due }) => due === null);
    const soonest = Math.min(...enough.map(({ due }) => due ?? -Infinity));
    const at = here.length > 0 ? here : enough.filter(({ due }) => due === soonest);
    const [best] = this.ranked(
      at.map(({ pool }) => pool),
      operation,
      last,
    );
    if (best) return { from: here.length > 0 ? 'stock' : 'delivery', lot: best.lot, short: null };
    const lot = issued.length === 1 ? (issued[0] as Lot) : asked;
    // The lot that it names was to be had alone; where that cannot be, the others are as good.
    if (line.mixLots) return anyOf;
    const there = fitting.filter((one) => wholeSheets(onHandOf(one)) > 0);
    const short =
      there.length === 0
        ? null
        : {
            needs: this.sheetsFor(operation, pieces),
            lots: there.map((one) => ({ lot: one.lot, sheets: wholeSheets(onHandOf(one)) })),
          };
    return { from: 'purchase', lot, short };
  }

  /** Lots that each have enough for a line, the best first. */
  private ranked(lots: readonly Pool[], { line }: ShopOperation, last: string): readonly Pool[] {
    if (lots.length < 2) return lots;
    const ofOrder = this.ofOrder.get(`${line.orderId} ${metalKey(line)}`) ?? [];
    const rank = (lot: Pool): readonly number[] => [
      ofOrder.some((one) => sameLot(one, lot.lot)) ? 0 : 1,
      this.hasAllOfOrder(lot, line) ? 0 : 1,
      last === cutOf(line, { from: 'stock', lot: lot.lot }) ? 0 : 1,
      lot.lot.lot === '' ? 1 : 0,
      wholeArea(onHandOf(lot)),
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
  private hasAllOfOrder(lot: Pool, line: ShopOperation['line']): boolean {
    let left = lot;
    for (const operation of this.operations) {
      const other = operation.line;
      if (operation.stage !== 'shear' || other.orderId !== line.orderId || this.given.has(other.id)) continue;
      if (metalKey(other) !== metalKey(line)) continue;
      const cut = drawFrom([left], operation.blank, piecesLeft(this.shop, operation));
      if (cut.missing > 0) return false;
      left = cut.left[0] as Pool;
    }
    return true;
  }

  private take(operation: ShopOperation, { from, lot }: LineLot): MetalCover {
    const pieces = piecesLeft(this.shop, operation);
    if (from === 'purchase') return { ...ALL_HERE, missing: pieces };
    const pools = this.poolsOf(operation.line);
    const isOwn = (one: Pool): boolean => (from === 'mixed' ? suits(lot, one.lot) : sameLot(one.lot, lot));
    const { left, missing, awaited } = drawFrom(pools, operation.blank, pieces, isOwn);
    this.left.set(metalKey(operation.line), left);
    // Work under way has its metal, whatever the stock says.
    const waits = this.shop.settings.awaitMetal && operation.started === null;
    return { arrival: waits ? (awaited.at(-1)?.due ?? null) : null, awaited, missing };
  }

  /** A shear goes over to other sheets: what it has cut into of a metal is no use to a later run. */
  private putAway(metal: string): void {
    const pools = this.left.get(metal);
    if (pools) this.left.set(metal, pools.map(poolPutAway));
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
