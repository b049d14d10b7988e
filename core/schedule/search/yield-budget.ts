/** Work between two yields, in operations timed: some ten milliseconds. */
const LONGEST = 120_000;
/** The first yield comes sooner: code that has hardly run yet is ten times as slow. */
const FIRST = 3_000;
const GROWTH = 1.5;

/**
 * How much work a search (a generator: cooperative multitasking) may do before it yields control to its caller, who may
 * stop it. Counted in operations timed, not in time, so that the search is deterministic: same seed, same yields.
 *
 * The budgets are 3,000, 4,500, 6,750 … and from the eleventh on 120,000 operations.
 */
export class YieldBudget {
  #length = FIRST;
  #until = FIRST;

  /** Is a yield due? @param work all work done so far */
  isDue(work: number): boolean {
    if (work < this.#until) return false;
    this.#length = Math.min(LONGEST, this.#length * GROWTH);
    this.#until = work + this.#length;
    return true;
  }
}
