import { isContended } from '../../contention.ts';
import type { Problem } from '../../problem.ts';

/** Operations up to which the tabu list, a table of pairs, is small enough. */
const LARGEST = 2000;

/**
 * A job shop where only the makespan counts, as a graph: each operation after the one before it in its job and the one
 * before it on its machine. Heads are earliest starts, tails the longest way from an operation's end to the end of all.
 */
export class JobShopGraph {
  readonly operations: number;
  readonly seconds: Int32Array;
  readonly jobOf: Int32Array;
  readonly machineOf: Int32Array;
  /** Neighbours, −1 where there is none. */
  readonly jobBefore: Int32Array;
  readonly jobAfter: Int32Array;
  readonly machineBefore: Int32Array;
  readonly machineAfter: Int32Array;
  readonly head: Float64Array;
  readonly tail: Float64Array;
  makespan = Infinity;
  readonly #machines: number;
  readonly #release: Float64Array;
  readonly #order: Int32Array;
  readonly #waits: Int32Array;

  /** Can this problem be searched so? Work of zero seconds would void the conditions under which moves are safe. */
  static fits(problem: Problem): boolean {
    const { objective, machines, sameOrder } = problem.input;
    const { makespan, ...others } = objective;
    if (makespan <= 0 || Object.values(others).some((weight) => weight > 0) || sameOrder) return false;
    if (isContended(problem)) return false;
    const plain = (m: number) =>
      machines[m]!.open === null && problem.setups[m]!.free && problem.availableFrom[m] === problem.input.now;
    return (
      machines.every((_, m) => plain(m)) &&
      problem.eligible.every((able) => able.length === 1) &&
      problem.operations <= LARGEST &&
      problem.eligible.every((able, o) => problem.seconds[o * problem.machines + able[0]!]! > 0) &&
      problem.fixed.every((fixed) => fixed === 0) &&
      problem.transferShare.every((share) => share === 1)
    );
  }

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    const n = problem.operations;
    const last = (o: number) => o + 1 === problem.firstOf[problem.jobOf[o]! + 1];
    const first = (o: number) => problem.firstOf[problem.jobOf[o]!] === o;
    this.operations = n;
    this.jobOf = problem.jobOf;
    this.machineOf = Int32Array.from(problem.eligible, (able) => able[0]!);
    this.seconds = Int32Array.from(this.machineOf, (m, o) => problem.seconds[o * problem.machines + m]!);
    this.jobBefore = Int32Array.from({ length: n }, (_, o) => (first(o) ? -1 : o - 1));
    this.jobAfter = Int32Array.from({ length: n }, (_, o) => (last(o) ? -1 : o + 1));
    this.machineBefore = new Int32Array(n);
    this.machineAfter = new Int32Array(n);
    this.head = new Float64Array(n);
    this.tail = new Float64Array(n);
    this.#machines = problem.machines;
    this.#release = Float64Array.from(problem.jobOf, (j, o) =>
      first(o) ? problem.release[j]! - problem.input.now : 0,
    );
    this.#order = new Int32Array(n);
    this.#waits = new Int32Array(n);
    this.load(queues);
  }

  load(queues: readonly ArrayLike<number>[]): void {
    for (const queue of queues)
      for (let k = 0; k < queue.length; k++) {
        this.machineBefore[queue[k]!] = queue[k - 1] ?? -1;
        this.machineAfter[queue[k]!] = queue[k + 1] ?? -1;
      }
    this.time();
  }

  queues(): Int32Array[] {
    const queues: number[][] = Array.from({ length: this.#machines }, () => []);
    for (let o = 0; o < this.operations; o++) {
      if (this.machineBefore[o] !== -1) continue;
      for (let k = o; k !== -1; k = this.machineAfter[k]!) queues[this.machineOf[o]!]!.push(k);
    }
    return queues.map((queue) => Int32Array.from(queue));
  }

  endOf(o: number): number {
    return o < 0 ? 0 : this.head[o]! + this.seconds[o]!;
  }

  /** Longest way from the start of an operation to the end of all; 0 for none. */
  wayFrom(o: number): number {
    return o < 0 ? 0 : this.tail[o]! + this.seconds[o]!;
  }

  /** Takes an operation out of its queue and inserts it right behind another, or first (−1, then ahead of `next`). */
  insert(o: number, behind: number, next: number): void {
    const before = this.machineBefore[o]!;
    const after = this.machineAfter[o]!;
    if (before >= 0) this.machineAfter[before] = after;
    if (after >= 0) this.machineBefore[after] = before;
    this.machineBefore[o] = behind;
    this.machineAfter[o] = next;
    if (behind >= 0) this.machineAfter[behind] = o;
    if (next >= 0) this.machineBefore[next] = o;
  }

  /** Heads, tails and makespan of the queues as they are. @returns false when queues wait for each other */
  time(): boolean {
    const { operations: n, jobBefore, jobAfter, machineBefore, machineAfter, head, tail } = this;
    let count = 0;
    for (let o = 0; o < n; o++) {
      this.#waits[o] = Number(jobBefore[o]! >= 0) + Number(machineBefore[o]! >= 0);
      if (this.#waits[o] === 0) this.#order[count++] = o;
    }
    this.makespan = 0;
    for (let k = 0; k < count; k++) {
      const o = this.#order[k]!;
      head[o] = Math.max(this.#release[o]!, this.endOf(jobBefore[o]!), this.endOf(machineBefore[o]!));
      this.makespan = Math.max(this.makespan, this.endOf(o));
      const job = jobAfter[o]!;
      const machine = machineAfter[o]!;
      if (job >= 0 && --this.#waits[job]! === 0) this.#order[count++] = job;
      if (machine >= 0 && --this.#waits[machine]! === 0) this.#order[count++] = machine;
    }
    if (count < n) return false;
    for (let k = n - 1; k >= 0; k--) {
      const o = this.#order[k]!;
      tail[o] = Math.max(this.wayFrom(jobAfter[o]!), this.wayFrom(machineAfter[o]!));
    }
    return true;
  }
}
