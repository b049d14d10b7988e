/** Anchors on either side of no shift, and how many of them lie within the mean distance between two ends. */
const REACH = 28;
const PER_JOB = 2;
const ROW = 2 * (2 * REACH + 1);

/**
 * A lower bound on what a stretch of jobs costs when it is shifted in time. The cost of a job, flow × end + late ×
 * max(0, end − due), is convex in its end, so at every shift it lies on or above the tangents at other shifts; those at
 * the two anchors around a shift come close to the cost itself:
 *
 *     cost(x) ≥ cost(a) + slope(a) × (x − a)   for the anchor a below x and the one above
 *
 * Values and slopes are summed over the positions from the front, so any stretch is a subtraction.
 *
 * Worked out by hand: a job due at 10, 2 a second late, ends at 8; it is to be shifted by 3, anchors at 2 and 4. At 2 it
 * ends at 10, value 0, slope 0: the tangent at 3 is 0. At 4 it ends at 12, value 4, slope 2: 4 − 2 × 1 = 2. The bound is
 * the larger, 2, here the cost itself (it ends at 11, 1 s late).
 */
export class Tangents {
  readonly #step: number;
  readonly #late: Float64Array;
  readonly #due: Float64Array;
  readonly #flow: number;
  /** Per position a row: per anchor the value, then the slope, of all positions before it. */
  readonly #sums: Float64Array;

  /** @param late cost per second after `due`, by job; `flow` per second of anything; `meanGap` between two ends */
  constructor(late: Float64Array, due: Float64Array, flow: number, meanGap: number) {
    this.#late = late;
    this.#due = due;
    this.#flow = flow;
    this.#step = Math.max(1, meanGap / PER_JOB);
    this.#sums = new Float64Array(ROW * (late.length + 1));
  }

  /** Recomputes the sums from a position on. */
  build(order: Int32Array, end: Float64Array, from: number): void {
    const sums = this.#sums;
    const flow = this.#flow;
    for (let k = from; k < order.length; k++) {
      const job = order[k]!;
      const late = this.#late[job]!;
      let at = end[k]! - REACH * this.#step;
      let over = at - this.#due[job]!;
      for (let g = k * ROW, all = g + ROW; g < all; g += 2) {
        const isLate = over > 0;
        sums[g + ROW] = sums[g]! + flow * at + (isLate ? late * over : 0);
        sums[g + ROW + 1] = sums[g + 1]! + flow + (isLate ? late : 0);
        at += this.#step;
        over += this.#step;
      }
    }
  }

  /** Once shifted, the positions [from, until) cost at least this. */
  least(from: number, until: number, shift: number): number {
    const sums = this.#sums;
    const anchor = Math.max(-REACH, Math.min(REACH - 1, Math.floor(shift / this.#step)));
    const past = shift - anchor * this.#step;
    const left = from * ROW + 2 * (anchor + REACH);
    const right = until * ROW + 2 * (anchor + REACH);
    const below = sums[right]! - sums[left]! + past * (sums[right + 1]! - sums[left + 1]!);
    const ahead = past - this.#step;
    const above = sums[right + 2]! - sums[left + 2]! + ahead * (sums[right + 3]! - sums[left + 3]!);
    return below > above ? below : above;
  }
}
