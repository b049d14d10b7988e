import type { Problem } from '../problem.ts';
import type { Insertion } from './insertion.ts';

/**
 * Insertion for the makespan of a permutation flow shop, all positions of a job in O(jobs × machines): heads of the jobs
 * before a position and tails of those after it are worked out once. Changeovers s lie between neighbours; they may run
 * while a job is still on the machine before. For a job with work p at position i, machine by machine:
 *
 *     end(k) = max(end(k − 1), head(i, k) + s(before, job)) + p(k)
 *     makespan = max over k of end(k) + s(job, after) + tail(i, k)
 *
 * Worked out by hand, two machines, no changeovers: A (3, 2), B (1, 4); C (2, 1) is to be inserted. Between them: A ends
 * at 3 and 5, the heads; from B's start 5 s are left on the first machine and 4 on the second, the tails. C ends at
 * max(0, 3) + 2 = 5 and max(5, 5) + 1 = 6: makespan max(5 + 5, 6 + 4) = 10. At the front C ends at 2 and 3, A B from A's
 * start has tails 9 and 6 (A ends at 3 and 5, B at 4 and 9): max(2 + 9, 3 + 6) = 11. Behind: A B leaves the machines at
 * 4 and 9, C ends at 6 and 10: 10.
 * Sources: E. Taillard, EJOR 47, 1990, pp. 65-74; with setups R. Ruiz and T. Stuetzle, EJOR 187, 2008, pp. 1143-1159.
 */
export class MakespanInsertion implements Insertion {
  work = 0;
  readonly #machines: number;
  /** Seconds by job, then machine along the route. */
  readonly #seconds: Int32Array;
  /** Changeover seconds by machine, job before (jobs: the machine's first state), job after. */
  readonly #setups: readonly (readonly Int32Array[])[];
  readonly #heads: Int32Array;
  readonly #tails: Int32Array;
  readonly #jobs: number;

  /** Can this problem be searched so? One route for all, nothing but the makespan, no hours, releases or transfer lots. */
  static fits(problem: Problem): boolean {
    const { objective, machines, now } = problem.input;
    const only =
      objective.makespan > 0 &&
      !objective.weightedTardiness &&
      !objective.changeover &&
      !objective.flowTime &&
      !objective.stability;
    if (!only || problem.jobs === 0 || problem.machineOrder === null) return false;
    const steps = problem.firstOf[1]!;
    for (let o = 0; o < problem.operations; o++)
      if (problem.eligible[o]![0] !== problem.eligible[o % steps]![0] || problem.transferShare[o] !== 1)
        return false;
    if (problem.firstOf.some((first, j) => first !== j * steps)) return false;
    if (problem.release.some((release) => release > now) || problem.availableFrom.some((from) => from > now))
      return false;
    return machines.every((machine, m) => machine.open === null && problem.setups[m]!.complete);
  }

  constructor(problem: Problem) {
    const steps = problem.firstOf[1]!;
    const route = Array.from({ length: steps }, (_, k) => problem.eligible[k]![0]!);
    this.#jobs = problem.jobs;
    this.#machines = steps;
    this.#seconds = Int32Array.from(
      { length: problem.operations },
      (_, o) => problem.seconds[o * problem.machines + route[o % steps]!]!,
    );
    this.#setups = route.map((m, k) => {
      const { classOf } = problem.setups[m]!;
      const row = (state: number) => {
        const seconds = problem.setups[m]!.row(state);
        return Int32Array.from({ length: problem.jobs }, (_, j) => seconds[classOf[j * steps + k]!]!);
      };
      return [
        ...Array.from({ length: problem.jobs }, (_, j) => row(classOf[j * steps + k]!)),
        row(problem.initialState[m]!),
      ];
    });
    this.#heads = new Int32Array((problem.jobs + 2) * steps);
    this.#tails = new Int32Array((problem.jobs + 2) * steps);
  }

  value(order: readonly number[]): number {
    this.#timeHeads(order);
    let latest = 0;
    for (let k = 0; k < this.#machines; k++)
      latest = Math.max(latest, this.#heads[order.length * this.#machines + k]!);
    return latest;
  }

  *best(
    order: readonly number[],
    job: number,
    tie: number,
  ): Generator<void, { position: number; value: number }> {
    const machines = this.#machines;
    this.#timeHeads(order);
    this.#timeTails(order);
    let value = Infinity;
    let position = 0;
    let equal = 0;
    for (let i = 0; i <= order.length; i++) {
      const before = i === 0 ? this.#jobs : order[i - 1]!;
      const after = i === order.length ? -1 : order[i]!;
      let end = 0;
      let span = 0;
      for (let k = 0; k < machines; k++) {
        const setup = this.#setups[k]!;
        const free = this.#heads[i * machines + k]! + setup[before]![job]!;
        if (free > end) end = free;
        end += this.#seconds[job * machines + k]!;
        const total = end + (after < 0 ? 0 : setup[job]![after]!) + this.#tails[i * machines + k]!;
        if (total > span) span = total;
      }
      if (span > value) continue;
      equal = span < value ? 1 : equal + 1;
      // The n-th of equal positions replaces the one held with chance 1/n.
      if (span < value || (tie * 997 * equal) % 1 < 1 / equal) position = i;
      value = span;
    }
    this.work += 3 * order.length * machines;
    return { position, value };
  }

  /** Row i: when each machine is free after the first i jobs. */
  #timeHeads(order: readonly number[]): void {
    const machines = this.#machines;
    const heads = this.#heads;
    for (let i = 0; i < order.length; i++) {
      const job = order[i]!;
      const before = i === 0 ? this.#jobs : order[i - 1]!;
      let end = 0;
      for (let k = 0; k < machines; k++) {
        const free = heads[i * machines + k]! + this.#setups[k]![before]![job]!;
        if (free > end) end = free;
        end += this.#seconds[job * machines + k]!;
        heads[(i + 1) * machines + k] = end;
      }
    }
  }

  /** Row i: from the start of the i-th job's work on each machine to the end of everything. */
  #timeTails(order: readonly number[]): void {
    const machines = this.#machines;
    const tails = this.#tails;
    tails.fill(0, order.length * machines, (order.length + 1) * machines);
    for (let i = order.length - 1; i >= 0; i--) {
      const job = order[i]!;
      const after = i + 1 === order.length ? -1 : order[i + 1]!;
      let rest = 0;
      for (let k = machines - 1; k >= 0; k--) {
        const left = tails[(i + 1) * machines + k]! + (after < 0 ? 0 : this.#setups[k]![job]![after]!);
        if (left > rest) rest = left;
        rest += this.#seconds[job * machines + k]!;
        tails[i * machines + k] = rest;
      }
    }
  }
}
