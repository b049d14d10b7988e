/**
 * The problem under both one- and two-dimensional cutting: cover a demand with columns, each one way of cutting one
 * stock piece, at the least cost of stock. What a column looks like on the metal (`layout`) is the caller's affair.
 */
export interface Column<T = unknown> {
  /** Index into `Cover.stock`. */
  readonly stock: number;
  /** How much of the stock's availability one use takes: 1 for a piece, millimetres for a coil. */
  readonly use: number;
  readonly cost: number;
  /** Pieces yielded, as [item, count] pairs, items ascending, counts above 0 (but for balances). */
  readonly pieces: readonly (readonly [item: number, count: number])[];
  readonly layout: T;
}

export interface CoverStock {
  /** null: as much as needed. */
  readonly available: number | null;
}

/** The most valuable pattern of one stock: what pricing finds. */
export interface Peak {
  readonly stock: number;
  readonly use: number;
  readonly cost: number;
  /** No pattern of this stock (and use) is worth more than this; Infinity where that was not looked into. */
  readonly bound: number;
}

interface Pricing<T> {
  readonly columns: readonly Column<T>[];
  /** One per stock, or one per panel length for a coil. */
  readonly peaks: readonly Peak[];
}

export type Effort = 'quick' | 'exact';

export interface Cover<T = unknown> {
  /** Pieces wanted of each item. */
  readonly demand: readonly number[];
  /**
   * Items from this one on are balances: what some columns give and others take (a count below 0), always counted in
   * full; a demand below 0 is what is still there to take. Absent: none.
   */
  readonly balancesFrom?: number;
  readonly stock: readonly CoverStock[];
  /** Length or area of each item: what the first heuristics go by. */
  readonly sizes: readonly number[];
  /** Every cost is a whole multiple of this; 0 when unknown. Lets a bound be rounded up. */
  readonly costUnit: number;
  /** No cover costs less, whatever the columns: known before any is priced, for instance by area alone. */
  readonly floor: number;
  /** By item, cost of a piece that nothing covers: far above what any column asks for it. */
  readonly missing: readonly number[];
  /** The same in smaller parts; absent where not offered. */
  readonly parts?: PartCover<T>;
  /**
   * The best columns for these item values, with no more of any item than `wanted`.
   * @param stockDuals only columns worth more than cost + dual × use matter; null: any of value above 0
   * @param effort `quick` may miss the best column and leave the bound loose
   * @param without stocks to be left out; absent: none. Where some are, one column of each of the others will do
   */
  price(
    values: readonly number[],
    wanted: readonly number[],
    stockDuals: readonly number[] | null,
    effort: Effort,
    without?: ReadonlySet<number>,
  ): Pricing<T>;
  /**
   * Every full column whose value is at least its cost (+ dual × use) less `gap`, or null when there are too many.
   * Absent where not offered.
   */
  enumerate?(values: readonly number[], stockDuals: readonly number[], gap: number): Column<T>[] | null;
}

/**
 * A cover whose columns are made up of parts that go together in many ways, by those parts: far fewer of them say the same.
 * What one part gives and another takes is a balance.
 */
export interface PartCover<T, P = unknown> {
  readonly cover: Cover<P>;
  split(uses: readonly Use<T>[]): Use<P>[];
  /** Parts that cover the demand put together again; places that hold nothing are left out. */
  join(uses: readonly Use<P>[]): Use<T>[];
}

export interface Use<T = unknown> {
  readonly column: Column<T>;
  readonly count: number;
}

/** What a column yields at the given item values. */
export const valueOf = (column: Column, values: readonly number[]): number =>
  column.pieces.reduce((sum, [item, count]) => sum + (values[item] ?? 0) * count, 0);

/** Total cost of the columns used. */
export const costOf = (uses: readonly Use[]): number =>
  uses.reduce((sum, use) => sum + use.column.cost * use.count, 0);

/** A text that is equal for columns that cut the same pieces from the same stock. */
export const columnKey = (column: Column): string =>
  `${column.stock}/${column.use}:${column.pieces.map(([item, count]) => `${item}x${count}`).join(',')}`;

/** A bound rounded up to the next cost that can occur. */
export function roundUp(cover: Cover, bound: number): number {
  const slack = 1e-6 * Math.max(1, Math.abs(bound));
  return cover.costUnit > 0 ? Math.ceil((bound - slack) / cover.costUnit) * cover.costUnit : bound;
}
