import type { Problem } from '../../problem.ts';
import { Tangents } from './tangents.ts';

/** Jobs up to which trying every move of a stretch is quick. */
const LARGEST = 150;

/**
 * One job order on one machine that never idles, with the end and cost of every position. Moves are evaluated by shifts
 * in time: a stretch that keeps its inner order shifts as one block, and `Tangents` gives a lower bound on what it then
 * costs. So most moves are rejected after a few additions, without a look at the jobs in the block. Times count from the
 * machine's start.
 *
 * Nothing is fixed and every order can be carried out (see `fits`), so a move is valid as soon as its positions are.
 */
export class Sequence {
  readonly jobs: number;
  readonly order: Int32Array;
  /** Objective of the order as it is. */
  objective = 0;
  readonly seconds: Float64Array;
  /** Changeover seconds from job a (jobs: the machine's first state) to job b at [a × jobs + b]. */
  readonly setup: Float64Array;
  readonly #due: Float64Array;
  readonly #late: Float64Array;
  readonly #flow: number;
  /** Seconds of work in all, and what the objective counts from: releases, and now for the end of all. */
  readonly #worked: number;
  readonly #given: number;
  /** What a second more of changeover costs; the work is the same in every order, so that it is also a second of makespan. */
  readonly changeoverCost: number;
  /** End of each position. */
  readonly end: Float64Array;
  /** Cost of all positions before this one, changeovers and makespan left out. */
  readonly sum: Float64Array;
  readonly #weightSetup: number;
  readonly #weightEnd: number;
  readonly #tangents: Tangents;
  /** Position from which on the tangents are out of date. */
  #stale = 0;
  /** The stretch being moved. */
  readonly #block: Int32Array;

  /** Can this problem be searched so? One machine without hours or waits, jobs of one operation, nothing fixed. */
  static fits(problem: Problem): boolean {
    const { machines, crew, objective } = problem.input;
    if (problem.machines !== 1 || problem.operations !== problem.jobs || problem.jobs < 2) return false;
    if (problem.jobs > LARGEST) return false;
    if (machines[0]!.open !== null || crew?.length || objective.stability > 0) return false;
    return (
      problem.setups[0]!.complete &&
      problem.release.every((release) => release <= problem.availableFrom[0]!) &&
      problem.fixed.every((fixed) => fixed === 0)
    );
  }

  constructor(problem: Problem, order: ArrayLike<number>) {
    const n = problem.jobs;
    const { objective, jobs, now } = problem.input;
    const start = problem.availableFrom[0]!;
    const table = problem.setups[0]!;
    this.jobs = n;
    this.order = Int32Array.from(order);
    this.seconds = Float64Array.from(problem.seconds);
    this.setup = new Float64Array((n + 1) * n);
    for (let a = 0; a <= n; a++) {
      const row = table.row(a === n ? problem.initialState[0]! : table.classOf[a]!);
      for (let b = 0; b < n; b++) this.setup[a * n + b] = row[table.classOf[b]!]!;
    }
    this.#due = problem.due.map((due) => due - start);
    this.#late = problem.weight.map((weight) => weight * objective.weightedTardiness);
    this.#flow = objective.flowTime;
    this.#weightSetup = objective.changeover;
    this.#weightEnd = objective.makespan;
    this.changeoverCost = this.#weightSetup + this.#weightEnd;
    this.#worked = this.seconds.reduce((sum, seconds) => sum + seconds, 0);
    this.#given =
      objective.flowTime * jobs.reduce((sum, job) => sum + job.release - start, 0) +
      objective.makespan * (now - start);
    this.end = new Float64Array(n);
    this.sum = new Float64Array(n + 1);
    this.#tangents = new Tangents(this.#late, this.#due, this.#flow, Math.max(1, this.#worked / n));
    this.#block = new Int32Array(n);
    this.#time(0);
  }

  load(order: ArrayLike<number>): void {
    this.order.set(order);
    this.#time(0);
  }

  /** Puts the stretch [from, middle) behind the stretch [middle, until). */
  exchange(from: number, middle: number, until: number): void {
    const { order } = this;
    const block = this.#block;
    const count = middle - from;
    for (let k = 0; k < count; k++) block[k] = order[from + k]!;
    for (let k = middle; k < until; k++) order[k - count] = order[k]!;
    for (let k = 0; k < count; k++) order[until - count + k] = block[k]!;
    this.#time(from);
  }

  swap(from: number, to: number): void {
    const a = this.order[from]!;
    this.order[from] = this.order[to]!;
    this.order[to] = a;
    this.#time(from);
  }

  /** What a job costs that ends then. */
  costAt(job: number, end: number): number {
    const late = end - this.#due[job]!;
    return this.#flow * end + (late > 0 ? this.#late[job]! * late : 0);
  }

  /** What shifting the positions [from, until) by so many seconds adds to their cost at the least. */
  leastOfShift(from: number, until: number, shift: number): number {
    if (from === until || shift === 0) return 0;
    return this.#tangents.least(from, until, shift) + this.sum[from]! - this.sum[until]!;
  }

  /** Brings the tangents up to date; before the first `leastOfShift` after a change of the order. */
  refresh(): void {
    if (this.#stale === this.jobs) return;
    this.#tangents.build(this.order, this.end, this.#stale);
    this.#stale = this.jobs;
  }

  /** What shifting the positions [from, until) by so many seconds adds to their cost. */
  costOfShift(from: number, until: number, shift: number): number {
    const { order } = this;
    const end = this.end;
    let cost = this.sum[from]! - this.sum[until]!;
    for (let k = from; k < until; k++) cost += this.costAt(order[k]!, end[k]! + shift);
    return cost;
  }

  /** Times the order from a position on. */
  #time(from: number): void {
    const { order, jobs: n } = this;
    let at = from === 0 ? 0 : this.end[from - 1]!;
    let before = from === 0 ? n : order[from - 1]!;
    this.#stale = Math.min(this.#stale, from);
    for (let k = from; k < n; k++) {
      const job = order[k]!;
      at += this.setup[before * n + job]! + this.seconds[job]!;
      this.end[k] = at;
      this.sum[k + 1] = this.sum[k]! + this.costAt(job, at);
      before = job;
    }
    this.objective =
      this.sum[n]! + this.#weightSetup * (at - this.#worked) + this.#weightEnd * at - this.#given;
  }
}
