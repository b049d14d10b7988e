/** Where best to put one more job into a job order. */
export interface Insertion {
  /** Work done so far, in operations timed. */
  readonly work: number;
  /** Objective of a complete order. */
  value(order: readonly number[]): number;
  /**
   * The position at which `job` makes the (possibly partial) order cost least, and that cost. Among equal positions it takes
   * one by `tie`, a number from 0 up to 1. It yields where that takes long.
   */
  best(
    order: readonly number[],
    job: number,
    tie: number,
  ): Generator<void, { position: number; value: number }>;
}
