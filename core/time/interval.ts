/**
 * Half-open stretches [start, end) on one axis of whole seconds. Touching is not overlapping; a stretch whose end is
 * not after its start is empty and is dropped. Said here once, used everywhere.
 */
export interface Interval {
  readonly start: number;
  readonly end: number;
}

/**
 * All the time that at least one stretch covers.
 * @param stretches any order, may overlap; not changed
 * @returns ascending and disjoint; stretches that touch are joined
 */
export function union(stretches: readonly Interval[]): Interval[] {
  const sorted = stretches.filter((s) => s.end > s.start).sort((a, b) => a.start - b.start || a.end - b.end);
  const joined: { start: number; end: number }[] = [];
  for (const { start, end } of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && start <= last.end) last.end = Math.max(last.end, end);
    else joined.push({ start, end });
  }
  return joined;
}

/**
 * The time covered by both lists.
 * @param a, b ascending and disjoint, as `union` gives them
 */
export function intersect(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  const both: Interval[] = [];
  let i = 0;
  let j = 0;
  for (;;) {
    const x = a[i];
    const y = b[j];
    if (x === undefined || y === undefined) return both;
    const start = Math.max(x.start, y.start);
    const end = Math.min(x.end, y.end);
    if (start < end) both.push({ start, end });
    if (x.end <= y.end) i += 1;
    else j += 1;
  }
}

/**
 * The time in `from` that `holes` leaves.
 * @param from, holes ascending and disjoint, as `union` gives them
 */
export function subtract(from: readonly Interval[], holes: readonly Interval[]): Interval[] {
  const left: Interval[] = [];
  let first = 0;
  for (const { start, end } of from) {
    while ((holes[first]?.end ?? Infinity) <= start) first += 1;
    let at = start;
    for (let h = first; h < holes.length; h += 1) {
      const hole = holes[h];
      if (hole === undefined || hole.start >= end) break;
      if (hole.start > at) left.push({ start: at, end: hole.start });
      at = Math.max(at, hole.end);
    }
    if (at < end) left.push({ start: at, end });
  }
  return left;
}

/** Seconds covered by a disjoint list. */
export const total = (stretches: readonly Interval[]): number =>
  stretches.reduce((sum, s) => sum + Math.max(0, s.end - s.start), 0);
