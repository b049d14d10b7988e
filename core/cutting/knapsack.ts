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
  /** What is left over is nothing, or at least this: less cannot be cut off. */
  readonly thinBelow: number;
}
export const noRule: AxisRule = { wideAbove: Infinity, narrowBelow: 0, thinBelow: 0 };

/** Whether a shear can deal with what is left over, given whether a piece is there for the hold-downs. */
const leavesWell = (rule: AxisRule, room: number, grips: boolean): boolean =>
  (grips || room + lengthTolerance >= rule.narrowBelow) &&
  (room <= nothingLeft || room + lengthTolerance >= rule.thinBelow);

/** Counts per kind, in the order of the kinds given. */
export interface Pattern {
  readonly value: number;
  readonly counts: readonly number[];
}

/** Lengths closer than this are the same length: far below what a shear can hold, far above rounding noise. */
export const lengthTolerance = 1e-6;

/** Less than this is no metal but rounding: sizes are given to the hundredth. */
const nothingLeft = 0.005;

/** Usual number of columns of the bound table: fine enough to steer the search, quick enough to fill. */
const usualBuckets = 2000;

/**
 * Upper bounds on the value of any completion: row i, column b holds the most that kinds i … n−1 can be worth in a room
 * of b buckets. Sizes and rooms are rounded down to buckets, which can only let more in, so a bound never errs on the
 * low side; with whole-number lengths no greater than the number of buckets it is exact.
 */
interface Bounds {
  readonly table: Float64Array;
  readonly width: number;
  readonly unit: number;
}

function completionBounds(
  kinds: readonly PieceKind[],
  capacity: number,
  buckets: number,
  finest: number,
  room: (length: number) => Float64Array,
): Bounds {
  const unit = finest * Math.max(1, Math.ceil(capacity / buckets / finest));
  const width = Math.floor((capacity + lengthTolerance) / unit) + 1;
  const table = room((kinds.length + 1) * width);
  table.fill(0, kinds.length * width, (kinds.length + 1) * width);
  for (let i = kinds.length - 1; i >= 0; i--) fillRow(table, kinds[i] as PieceKind, i * width, width, unit);
  return { table, width, unit };
}

function fillRow(table: Float64Array, kind: PieceKind, row: number, width: number, unit: number): void {
  const next = row + width;
  const step = Math.floor(kind.size / unit + 1e-12);
  const { value, copies } = kind;
  // With one copy the room left goes to the later kinds; with copies for the whole length, to this kind again.
  const source = step > 0 && copies * step >= width - 1 ? row : next;
  const simple = source === row || copies === 1;
  for (let room = 0; room < width; room++) {
    let best = table[next + room] as number;
    if (simple) {
      if (room >= step) best = Math.max(best, (table[source + room - step] as number) + value);
    } else {
      for (let k = 1, left = room - step; k <= copies && left >= 0; k++, left -= step) {
        best = Math.max(best, (table[next + left] as number) + k * value);
      }
    }
    table[row + room] = best;
  }
}

/** Called with each pattern worth more than the threshold so far; returns the threshold from here on. */
type Visit = (value: number, counts: readonly number[], room: number) => number;

/** The patterns of one stock length at given values. */
export interface PatternSearch {
  /**
   * Visits every pattern above the threshold, depth first, the most valuable kind per length first.
   * @param copies of each kind at most; no more than when the search was made
   * @returns false when the node budget ran out before the end
   */
  visit(copies: readonly number[], threshold: number, nodes: number, visit: Visit): boolean;
  /** No pattern is worth more. */
  readonly bound: number;
  readonly kinds: readonly PieceKind[];
}

/**
 * Prepares the search for patterns of one stock length; the bound table is filled once.
 * @param capacity length to lay pieces on, trim taken off
 * @param room gives the bound table its room
 */
export function patternSearch(
  kinds: readonly PieceKind[],
  capacity: number,
  rule: AxisRule,
  buckets = usualBuckets,
  finest = 1,
  room = (length: number): Float64Array => new Float64Array(length),
): PatternSearch {
  const order = kinds
    .map((_, at) => at)
    .filter((at) => fits(kinds[at] as PieceKind, capacity))
    .sort((a, b) => density(kinds[b] as PieceKind) - density(kinds[a] as PieceKind) || a - b);
  const { table, width, unit } = completionBounds(
    order.map((at) => kinds[at] as PieceKind),
    capacity,
    buckets,
    finest,
    room,
  );
  const bucketOf = (room: number): number => Math.floor((room + lengthTolerance) / unit);
  const visit: PatternSearch['visit'] = (copies, threshold, nodes, see) => {
    const counts = new Array<number>(kinds.length).fill(0);
    let least = threshold;
    let left = nodes;
    // Each call is one pattern: it is extended by every later kind that may still pay, then seen as it is.
    const extend = (from: number, room: number, value: number, wide: boolean, grips: boolean): void => {
      if (left-- <= 0) return;
      const bucket = bucketOf(room);
      for (let i = from; i < order.length && value + (table[i * width + bucket] as number) > least; i++) {
        const at = order[i] as number;
        const { size, value: worth } = kinds[at] as PieceKind;
        const isWide = size > rule.wideAbove + lengthTolerance;
        const gripped = grips || size + lengthTolerance >= rule.narrowBelow;
        const most = Math.min(
          copies[at] as number,
          Math.floor((room + lengthTolerance) / size),
          isWide ? (wide ? 0 : 1) : Infinity,
        );
        for (let k = most; k > 0; k--) {
          const rest = room - k * size;
          const so = value + k * worth;
          if (so + (table[(i + 1) * width + bucketOf(rest)] as number) <= least) continue;
          counts[at] = k;
          extend(i + 1, rest, so, wide || isWide, gripped);
        }
        counts[at] = 0;
      }
      if (value > least && leavesWell(rule, room, grips)) least = see(value, counts, room);
    };
    extend(0, capacity, 0, false, false);
    return left >= 0;
  };
  return { visit, bound: table[bucketOf(capacity)] ?? 0, kinds };
}

const fits = (kind: PieceKind, capacity: number): boolean =>
  kind.value > 0 && kind.copies > 0 && kind.size <= capacity + lengthTolerance;
const density = (kind: PieceKind): number => kind.value / kind.size;

/** What a search for good patterns may cost and must find. */
export interface SearchEffort {
  /** Patterns to return, at most. */
  readonly keep: number;
  /** Calls of the search for the first pattern; a tenth of it for each further one. */
  readonly nodes: number;
  /**
   * A better pattern must beat the one at hand by this share of its lead over the threshold. 0: exactly the best.
   * Far from the optimum, where leads are large, this saves most of the search; near it, it costs nothing.
   */
  readonly slack: number;
}

/**
 * The most valuable pattern above `threshold`, then the most valuable of the pieces left, and so on: patterns that
 * share no piece serve column generation far better than near copies of the first.
 * @returns patterns, the best first; and a bound that no pattern's value exceeds (never below `threshold`)
 */
export function bestPatterns(
  search: PatternSearch,
  threshold: number,
  effort: SearchEffort,
): { patterns: Pattern[]; bound: number } {
  const copies = search.kinds.map((kind) => kind.copies);
  const patterns: Pattern[] = [];
  let bound = threshold;
  while (patterns.length < effort.keep) {
    let best: Pattern | undefined;
    let proven = threshold;
    const first = patterns.length === 0;
    const complete = search.visit(
      copies,
      threshold,
      first ? effort.nodes : effort.nodes / 10,
      (value, counts) => {
        best = { value, counts: counts.slice() };
        proven = value + effort.slack * (value - threshold) + 1e-9;
        return proven;
      },
    );
    if (first) bound = complete ? proven : Math.max(threshold, search.bound);
    if (!best) break;
    patterns.push(best);
    best.counts.forEach((count, at) => (copies[at] = (copies[at] as number) - count));
  }
  return { patterns, bound };
}

/** What the search for one pattern may cost. */
export interface PatternEffort {
  /** Columns of the bound table. */
  readonly buckets: number;
  /** A column is no narrower than this. */
  readonly finest: number;
  readonly nodes: number;
}
/** Where only a handful of pieces fit on a length, a coarse table does. */
export const fewPieces: PatternEffort = { buckets: 100, finest: 1, nodes: 20_000 };

/** Room for the bounds of a search that is over before the next begins: making it anew was an eighth of a fill's time. */
let scratch = new Float64Array(0);
function usedAgain(length: number): Float64Array {
  if (scratch.length < length) scratch = new Float64Array(2 * length);
  return scratch;
}

/**
 * The most valuable pattern alone.
 * @returns counts per kind (empty when no pattern is worth anything), and a bound that no pattern's value exceeds
 */
export function bestPattern(
  kinds: readonly PieceKind[],
  capacity: number,
  rule: AxisRule,
  { buckets, finest, nodes }: PatternEffort,
): { counts: readonly number[]; bound: number } {
  const search = patternSearch(kinds, capacity, rule, buckets, finest, usedAgain);
  const { patterns, bound } = bestPatterns(search, 0, { keep: 1, nodes, slack: 0 });
  return { counts: patterns[0]?.counts ?? [], bound };
}

/**
 * Every pattern worth more than `threshold`; with `full`, only those to which no further wanted piece can be added.
 * @returns null when there are more than `limit` or the search takes more than `nodes`
 */
export function allPatterns(
  search: PatternSearch,
  threshold: number,
  { full, limit, nodes }: { readonly full: boolean; readonly limit: number; readonly nodes: number },
): Pattern[] | null {
  const copies = search.kinds.map((kind) => kind.copies);
  const found: Pattern[] = [];
  const complete = search.visit(copies, threshold, nodes, (value, counts, room) => {
    const isFull = search.kinds.every(
      (kind, at) => kind.size > room + lengthTolerance || (counts[at] as number) >= kind.copies,
    );
    if (isFull || !full) found.push({ value, counts: counts.slice() });
    return found.length > limit ? Infinity : threshold;
  });
  return complete && found.length <= limit ? found : null;
}
