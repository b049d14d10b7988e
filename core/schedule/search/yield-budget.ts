/** Work between two looks at the outside, in operations timed: some ten milliseconds. */
const LONGEST = 120_000;
/** The first look comes sooner: code that has hardly run yet is ten times as slow. */
const FIRST = 3_000;
const GROWTH = 1.5;

/** Says when a search should look up, by the work it has done, so that a stop is seen soon and every run is the same. */
export class YieldBudget {
  #length = FIRST;
  #until = FIRST;

  /** @param work all work done so far */
  isDue(work: number): boolean {
    if (work < this.#until) return false;
    this.#length = Math.min(LONGEST, this.#length * GROWTH);
    this.#until = work + this.#length;
    return true;
  }
}
