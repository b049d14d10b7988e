import type { Problem } from '../problem.ts';

/** What the end of a job costs in the objective (all but changeovers and makespan), by its last operation. */
export class JobCosts {
  readonly #due: Float64Array;
  readonly #late: Float64Array;
  readonly #flow: Float64Array;
  readonly #release: Float64Array;
  readonly #reference: Float64Array;
  readonly #weights: { readonly flowTime: number; readonly stability: number };

  constructor(problem: Problem) {
    const { jobs, weightedTardiness, ...weights } = { jobs: problem.input.jobs, ...problem.input.objective };
    const n = problem.operations;
    this.#weights = weights;
    this.#due = new Float64Array(n).fill(Infinity);
    this.#late = new Float64Array(n);
    this.#flow = new Float64Array(n);
    this.#release = new Float64Array(n);
    this.#reference = new Float64Array(n).fill(NaN);
    jobs.forEach((job, j) => {
      const last = problem.firstOf[j + 1]! - 1;
      this.#due[last] = job.due ?? Infinity;
      this.#late[last] = job.weight * weightedTardiness;
      this.#flow[last] = weights.flowTime;
      this.#release[last] = job.release;
      this.#reference[last] = problem.reference[j]!;
    });
  }

  /** Cost when operation o ends then; 0 for all but a job's last. */
  at(o: number, end: number): number {
    let cost = this.#flow[o]! * (end - this.#release[o]!);
    if (end > this.#due[o]!) cost += this.#late[o]! * (end - this.#due[o]!);
    if (this.#weights.stability > 0 && !Number.isNaN(this.#reference[o]!))
      cost += this.#weights.stability * Math.abs(end - this.#reference[o]!);
    return cost;
  }

  /** What each second that o ends later costs at least, and sooner gains at most, if it ended then; without stability. */
  slope(o: number, end: number): number {
    return this.#flow[o]! + (end > this.#due[o]! ? this.#late[o]! : 0);
  }

  /** What these ends cost for being off the reference plan. */
  stability(end: Float64Array): number {
    if (this.#weights.stability === 0) return 0;
    let total = 0;
    for (let o = 0; o < end.length; o++)
      if (!Number.isNaN(this.#reference[o]!)) total += Math.abs(end[o]! - this.#reference[o]!);
    return this.#weights.stability * total;
  }
}
