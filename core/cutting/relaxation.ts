import { columnKey, type Column, type Cover, type Effort, type Peak } from './cover.ts';
import { createMaster } from './simplex.ts';

/** Columns met so far, each once. */
export interface Pool<T> {
  readonly columns: Column<T>[];
  readonly keys: Set<string>;
  /** By column its items, and the counts of each: laid out to be gone through quickly. */
  readonly items: Int32Array[];
  readonly counts: Float64Array[];
}

export const createPool = <T>(columns: readonly Column<T>[]): Pool<T> => {
  const pool: Pool<T> = { columns: [], keys: new Set(), items: [], counts: [] };
  for (const column of columns) addTo(pool, column);
  return pool;
};

/** @returns whether the column was new */
export function addTo<T>(pool: Pool<T>, column: Column<T>): boolean {
  const key = columnKey(column);
  if (column.pieces.length === 0 || pool.keys.has(key)) return false;
  pool.keys.add(key);
  pool.columns.push(column);
  pool.items.push(Int32Array.from(column.pieces, ([item]) => item));
  pool.counts.push(Float64Array.from(column.pieces, ([, count]) => count));
  return true;
}

/** What is still to be covered, and the stock still there. */
export interface Rest {
  readonly wanted: readonly number[];
  readonly available: readonly (number | null)[];
}

export const wholeOf = (cover: Cover): Rest => ({
  wanted: cover.demand,
  available: cover.stock.map((one) => one.available),
});

export interface Relaxed<T> {
  /** Columns at a positive level with their (fractional) uses, in a fixed order. */
  readonly fractional: readonly { readonly column: Column<T>; readonly level: number }[];
  readonly itemDuals: readonly number[];
  readonly stockDuals: readonly number[];
  /** Cost over the columns at hand: never below what all columns together would give. */
  readonly cost: number;
  /** No way of covering the rest costs less than this, whatever columns there are. */
  readonly bound: number;
  /** Pricing proved that no further column helps: the bound is the relaxation's value. */
  readonly converged: boolean;
  /** Pieces that no combination of columns and stock covers. */
  readonly uncovered: number;
}

/** How far the relaxation is to be solved. */
interface RelaxEffort {
  /** Rounds of pricing, at most. */
  readonly rounds: number;
  /** Share of the cost within which the bound need not be driven any closer. */
  readonly closeEnough: number;
  /** Whether quick pricing is followed by exact pricing once it finds nothing. */
  readonly exact: boolean;
}

/** Columns of the pool taken into the programme at once. */
const takenAtOnce = 50;

/**
 * Solves the relaxation by column generation, yielding after each round of pricing so that a caller can stop.
 * The programme begins with the columns `start` and takes from the pool what helps, so that a large pool costs little.
 * Sources: P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961) 849-859, for the method;
 * A. A. Farley, Operations Research 38 (1990) 922-923, for the bound before convergence.
 */
export function* relax<T>(
  cover: Cover<T>,
  rest: Rest,
  pool: Pool<T>,
  effort: RelaxEffort,
  start: readonly Column<T>[] = pool.columns,
): Generator<Relaxed<T>, Relaxed<T>> {
  const master = masterOf(cover, rest, pool, start);
  let bound = 0;
  for (let round = 1; ; round++) {
    const { itemDuals, stockDuals, fractional, cost, uncovered } = master.solve();
    // Quick pricing until it finds nothing more; only then is the exact, slower one worth its time.
    const attempts: readonly Effort[] = effort.exact ? ['quick', 'exact'] : ['quick'];
    let fresh: Column<T>[] = [];
    let tight = false;
    for (const how of attempts) {
      const priced = cover.price(itemDuals, rest.wanted, stockDuals, how);
      fresh = priced.columns.filter((column) => master.gains(column) && addTo(pool, column));
      tight = how === 'exact' && priced.peaks.every((peak) => isTight(peak, stockDuals));
      bound = Math.max(bound, lagrangeBound(itemDuals, rest, priced.peaks));
      if (fresh.length > 0) break;
    }
    const ended = fresh.length === 0;
    const now = { fractional, itemDuals, stockDuals, cost, bound, converged: ended && tight, uncovered };
    if (ended || cost - bound <= effort.closeEnough * bound || round >= effort.rounds) return now;
    yield now;
    for (const column of fresh) master.add(column);
  }
}

const isTight = (peak: Peak, stockDuals: readonly number[]): boolean =>
  peak.bound <= peak.cost + (stockDuals[peak.stock] as number) * peak.use + 1e-6;

/** The linear programme over the rest, in terms of the cover's items and stocks. */
function masterOf<T>(cover: Cover<T>, rest: Rest, pool: Pool<T>, start: readonly Column<T>[]) {
  const balances = cover.balancesFrom ?? Infinity;
  const counted = (item: number, count: number): number =>
    item >= balances ? count : Math.min(count, rest.wanted[item] as number);
  const rows = rest.wanted
    .map((_, item) => item)
    .filter((item) => item >= balances || (rest.wanted[item] as number) > 0);
  const rowOf = new Map(rows.map((item, row) => [item, row]));
  const lp = createMaster(
    rows.map((item) => rest.wanted[item] as number),
    rest.available.map((available) => ({ available })),
    rows.map((item) => cover.missing[item] as number),
  );
  const used = new Set<Column<T>>();
  let itemDuals: number[] = [];
  let stockDuals: number[] = [];
  const inStock = (column: Column): boolean => column.use <= (rest.available[column.stock] ?? Infinity);
  const add = (column: Column<T>): void => {
    if (used.has(column)) return;
    used.add(column);
    // Pieces beyond what is wanted are worth nothing: counting them would only loosen the relaxation.
    const pieces = column.pieces.flatMap(([item, count]) => {
      const row = rowOf.get(item);
      return row === undefined ? [] : [[row, counted(item, count)] as const];
    });
    lp.add({ ...column, pieces });
  };
  /** What the relaxation gains by the column at the values last solved for. */
  const gain = (column: Column): number => {
    if (!inStock(column)) return -Infinity;
    let value = -column.cost - (stockDuals[column.stock] as number) * column.use;
    for (const [item, count] of column.pieces) value += counted(item, count) * (itemDuals[item] as number);
    return value;
  };
  const solveOnce = (): void => {
    lp.solve();
    const duals = lp.itemDuals();
    itemDuals = new Array<number>(rest.wanted.length).fill(0);
    rows.forEach((item, row) => (itemDuals[item] = duals[row] as number));
    stockDuals = lp.stockDuals();
  };
  const most = Float64Array.from(rest.wanted, (pieces, item) => (item >= balances ? Infinity : pieces));
  const fromPool = (): Column<T>[] =>
    promising(pool, most, { items: Float64Array.from(itemDuals), stocks: stockDuals })
      .filter((column) => inStock(column) && !used.has(column))
      .slice(0, takenAtOnce);
  for (const column of start) if (inStock(column)) add(column);
  return {
    add,
    gains: (column: Column): boolean => gain(column) > 1e-9,
    solve() {
      solveOnce();
      for (let more = fromPool(); more.length > 0; more = fromPool()) {
        for (const column of more) add(column);
        solveOnce();
      }
      const fractional = positive([...used], lp.values());
      return { itemDuals, stockDuals, fractional, cost: lp.cost(), uncovered: lp.uncovered() };
    },
  };
}

/** Columns at a positive level, with it. */
const positive = <T>(columns: readonly Column<T>[], levels: ArrayLike<number>) =>
  columns.map((column, at) => ({ column, level: levels[at] as number })).filter((one) => one.level > 1e-6);

/** Columns of the pool that the relaxation gains by, at the values last solved for, the best first. */
function promising<T>(
  pool: Pool<T>,
  most: Float64Array,
  duals: { items: Float64Array; stocks: readonly number[] },
): Column<T>[] {
  const found: { column: Column<T>; gain: number }[] = [];
  pool.columns.forEach((column, at) => {
    const own = worth(pool.items[at] as Int32Array, pool.counts[at] as Float64Array, most, duals.items);
    if (own <= column.cost + 1e-9) return;
    const gain = own - column.cost - (duals.stocks[column.stock] as number) * column.use;
    if (gain > 1e-9) found.push({ column, gain });
  });
  return found.sort((a, b) => b.gain - a.gain).map(({ column }) => column);
}

/** What pieces are worth, no more than `most` of each. */
function worth(items: Int32Array, counts: Float64Array, most: Float64Array, values: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < items.length; k++) {
    const item = items[k] as number;
    sum += Math.min(counts[k] as number, most[item] as number) * (values[item] as number);
  }
  return sum;
}

/**
 * A bound from any item values: for each scale t, t·(value of the demand) plus, for stock of limited number, what its
 * most overpriced pattern could still save. Unlimited stock allows only scales at which no pattern is overpriced.
 * 0 where a stock's best pattern was not looked into.
 */
export function lagrangeBound(values: readonly number[], rest: Rest, peaks: readonly Peak[]): number {
  if (!peaks.every((peak) => Number.isFinite(peak.bound))) return 0;
  const worth = rest.wanted.reduce((sum, pieces, item) => sum + pieces * (values[item] as number), 0);
  const scales = [
    1,
    ...peaks.filter((peak) => peak.bound > peak.cost && peak.cost > 0).map((peak) => peak.cost / peak.bound),
  ];
  const at = (scale: number): number => {
    const saving = new Map<number, number>();
    for (const peak of peaks) {
      const over = Math.max(0, (scale * peak.bound - peak.cost) / peak.use);
      saving.set(peak.stock, Math.max(saving.get(peak.stock) ?? 0, over));
    }
    let bound = scale * worth;
    for (const [stock, over] of saving) if (over > 1e-12) bound -= over * (rest.available[stock] ?? Infinity);
    return bound;
  };
  return Math.max(0, ...scales.map(at));
}
