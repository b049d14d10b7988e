/** A kind of piece that may be laid on one stock length: its size, what one is worth now, how many are wanted at most. */
export interface PieceKind {
  readonly size: number;
  readonly value: number;
  readonly copies: number;
}

/** What a machine asks of the pieces along one axis; `noRule` for plain lengths. */
export interface AxisRule {
  /** At most one piece may be larger: the back gauge does not reach it, so it has to be what remains. */
  readonly wideAbove: number;
  /** What remains in the hold-downs at the last cut must be at least this: a piece or the offcut. */
  readonly narrowBelow: number;
}
export const noRule: AxisRule = { wideAbove: Infinity, narrowBelow: 0 };

/** Counts per kind, in the order of the kinds given. */
export interface Pattern {
  readonly value: number;
  readonly counts: readonly number[];
}

/** Lengths closer than this are the same length: far below what a shear can hold, far above rounding noise. */
export const lengthTolerance = 1e-6;

/** The bound table has at most so many columns: fine enough to steer the search, small enough to fill in a millisecond. */
const maxBuckets = 6000;

/**
 * Upper bounds on the value of any completion: `bound(i, room)` for kinds i … n−1 in the given room.
 * Sizes and room are rounded down to buckets, which can only let more in, so the bound never errs on the low side;
 * with whole-number lengths up to 6,000 it is exact.
 */
function completionBounds(
  kinds: readonly PieceKind[],
  capacity: number,
): (from: number, room: number) => number {
  const unit = Math.max(1, Math.ceil(capacity / maxBuckets));
  const width = Math.floor((capacity + lengthTolerance) / unit) + 1;
  const table = new Float64Array((kinds.length + 1) * width);
  for (let i = kinds.length - 1; i >= 0; i--) fillRow(table, kinds[i] as PieceKind, i * width, width, unit);
  return (from, room) => table[from * width + Math.floor((room + lengthTolerance) / unit)] ?? 0;
}

function fillRow(table: Float64Array, kind: PieceKind, row: number, width: number, unit: number): void {
  const next = row + width;
  const step = Math.floor(kind.size / unit + 1e-12);
  const { value } = kind;
  const enough = step > 0 && kind.copies * step >= width - 1;
  for (let room = 0; room < width; room++) {
    let best = table[next + room] as number;
    if (enough) {
      if (room >= step) best = Math.max(best, (table[row + room - step] as number) + value);
    } else {
      for (let k = 1, left = room - step; k <= kind.copies && left >= 0; k++, left -= step) {
        const with_ = (table[next + left] as number) + k * value;
        if (with_ > best) best = with_;
      }
    }
    table[row + room] = best;
  }
}

export interface PatternSearch {
  readonly kinds: readonly PieceKind[];
  readonly capacity: number;
  readonly rule: AxisRule;
  /** Nodes of the search tree to look at, at most. */
  readonly nodes: number;
}

/** Called with each pattern worth more than the threshold so far; returns the threshold from here on. */
type Visit = (value: number, counts: readonly number[], room: number) => number;

/**
 * Depth-first search over patterns, most valuable kind per length first, cut short by the completion bound.
 * Exact: visits every pattern above the threshold, unless the node budget runs out.
 * @returns an upper bound on the value of any pattern when stopped early, null when complete
 */
function visitPatterns(search: PatternSearch, threshold: number, visit: Visit): number | null {
  const { capacity, rule } = search;
  const order = search.kinds
    .map((_, at) => at)
    .filter((at) => fits(search.kinds[at] as PieceKind, capacity))
    .sort((a, b) => density(search.kinds[b] as PieceKind) - density(search.kinds[a] as PieceKind) || a - b);
  const kinds = order.map((at) => search.kinds[at] as PieceKind);
  const bound = completionBounds(kinds, capacity);
  const counts = new Array<number>(search.kinds.length).fill(0);
  let least = threshold;
  let nodes = search.nodes;
  const descend = (i: number, room: number, value: number, wide: number, grips: boolean): void => {
    if (nodes-- <= 0) return;
    const more = bound(i, room);
    if (value + more <= least) return;
    if (i === kinds.length || more === 0) {
      if (grips || room + lengthTolerance >= rule.narrowBelow) least = visit(value, counts, room);
      return;
    }
    const { size, value: worth, copies } = kinds[i] as PieceKind;
    const isWide = size > rule.wideAbove + lengthTolerance;
    const most = Math.min(copies, Math.floor((room + lengthTolerance) / size), isWide ? 1 - wide : copies);
    const at = order[i] as number;
    for (let k = most; k >= 0; k--) {
      counts[at] = k;
      const left = room - k * size;
      if (value + k * worth + bound(i + 1, left) > least) {
        descend(
          i + 1,
          left,
          value + k * worth,
          wide + (isWide ? k : 0),
          grips || (k > 0 && size + lengthTolerance >= rule.narrowBelow),
        );
      }
    }
    counts[at] = 0;
  };
  descend(0, capacity, 0, 0, false);
  return nodes < 0 ? bound(0, capacity) : null;
}

const fits = (kind: PieceKind, capacity: number): boolean =>
  kind.value > 0 && kind.copies > 0 && kind.size <= capacity + lengthTolerance;
const density = (kind: PieceKind): number => kind.value / kind.size;

/**
 * The most valuable pattern above `threshold`, with the better ones met on the way (useful as further columns).
 * @returns patterns, best first, at most `keep`; and a bound that no pattern's value exceeds (never below `threshold`)
 */
export function bestPatterns(
  search: PatternSearch,
  threshold: number,
  keep: number,
): { patterns: Pattern[]; bound: number } {
  const found: Pattern[] = [];
  const cut = visitPatterns(search, threshold, (value, counts) => {
    found.push({ value, counts: counts.slice() });
    return value + 1e-9;
  });
  const patterns = found.reverse().slice(0, keep);
  return { patterns, bound: Math.max(threshold, cut ?? patterns[0]?.value ?? 0) };
}

/**
 * Every pattern worth more than `threshold` to which no further wanted piece can be added.
 * @returns null when there are more than `limit` or the node budget runs out
 */
export function allPatterns(search: PatternSearch, threshold: number, limit: number): Pattern[] | null {
  const found: Pattern[] = [];
  const cut = visitPatterns(search, threshold, (value, counts, room) => {
    const full = search.kinds.every(
      (kind, at) => kind.size > room + lengthTolerance || (counts[at] as number) >= kind.copies,
    );
    if (full) found.push({ value, counts: counts.slice() });
    return found.length > limit ? Infinity : threshold;
  });
  return cut !== null || found.length > limit ? null : found;
}
