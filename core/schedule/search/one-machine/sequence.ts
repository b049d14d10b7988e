import type { Problem } from '../../problem.ts';
import { Tangents } from './tangents.ts';

/** Jobs up to which trying every move of a stretch is quick. */
const LARGEST = 150;

/**
 * One job order on one machine that never idles, with the end and cost of every position. A change is evaluated by shifts: a
 * stretch that keeps its inner order moves in time as a whole, and `Tangents` says what that costs at least. So most
 * changes are refused after a few additions, without a look at the jobs between. Times count from the machine's start.
 */
export class Sequence {
  readonly jobs: number;
  readonly order: Int32Array;
  /** Objective of the order as it stands. */
  objective = 0;
  readonly #seconds: Float64Array;
  /** Changeover seconds from job a (jobs: the machine's first state) to job b at [a × jobs + b]. */
  readonly #setup: Float64Array;
  readonly #due: Float64Array;
  readonly #late: Float64Array;
  readonly #flow: number;
  /** Seconds of work in all, and what the objective counts from: releases, and now for the end of all. */
  readonly #worked: number;
  readonly #given: number;
  readonly #weightSetup: number;
  readonly #weightEnd: number;
  readonly #end: Float64Array;
  /** Cost of all positions before this one. */
  readonly #sum: Float64Array;
  readonly #tangents: Tangents;
  /** Place from which on the tangents are out of date. */
  #stale = 0;
  /** The stretch on its way. */
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
    this.#seconds = Float64Array.from(problem.seconds);
    this.#setup = new Float64Array((n + 1) * n);
    for (let a = 0; a <= n; a++) {
      const row = table.row(a === n ? problem.initialState[0]! : table.classOf[a]!);
      for (let b = 0; b < n; b++) this.#setup[a * n + b] = row[table.classOf[b]!]!;
    }
    this.#due = problem.due.map((due) => due - start);
    this.#late = problem.weight.map((weight) => weight * objective.weightedTardiness);
    this.#flow = objective.flowTime;
    this.#weightSetup = objective.changeover;
    this.#weightEnd = objective.makespan;
    this.#worked = this.#seconds.reduce((sum, seconds) => sum + seconds, 0);
    this.#given =
      objective.flowTime * jobs.reduce((sum, job) => sum + job.release - start, 0) +
      objective.makespan * (now - start);
    this.#end = new Float64Array(n);
    this.#sum = new Float64Array(n + 1);
    this.#tangents = new Tangents(this.#late, this.#due, this.#flow, Math.max(1, this.#worked / n));
    this.#block = new Int32Array(n);
    this.#time(0);
  }

  load(order: ArrayLike<number>): void {
    this.order.set(order);
    this.#time(0);
  }

  /**
   * What it costs to let the stretches [from, middle) and [middle, until) change positions; Infinity when surely more than
   * `limit`.
   */
  exchangeDelta(from: number, middle: number, until: number, limit: number): number {
    this.#refresh();
    const { order, jobs: n } = this;
    const end = this.#end;
    const setup = this.#setup;
    const before = from === 0 ? n : order[from - 1]!;
    const free = from === 0 ? 0 : end[from - 1]!;
    const first = order[from]!;
    const last = order[middle - 1]!;
    const second = order[middle]!;
    const ultimate = order[until - 1]!;
    const sooner = free + setup[before * n + second]! - end[middle - 1]! - setup[last * n + second]!;
    const later = end[until - 1]! + sooner + setup[ultimate * n + first]! - free - setup[before * n + first]!;
    let shift = end[middle - 1]! + later - end[until - 1]!;
    if (until < n) {
      const next = order[until]!;
      shift += setup[last * n + next]! - setup[ultimate * n + next]!;
    }
    // The work is the same, so what the end shifts by is changeovers.
    let delta = (this.#weightSetup + this.#weightEnd) * shift;
    const least = this.#least(from, middle, later);
    // What comes sooner can gain no more than all it costs.
    const most = this.#sum[shift < 0 ? n : until]! - this.#sum[middle]!;
    if (delta + least - most > limit) return Infinity;
    const rest = this.#least(until, n, shift);
    const gain = this.#least(middle, until, sooner);
    delta += rest + least + gain;
    if (delta > limit) return Infinity;
    delta += this.#shifted(from, middle, later) - least;
    if (delta > limit) return Infinity;
    delta += this.#shifted(middle, until, sooner) - gain;
    if (shift === 0 || delta > limit) return delta > limit ? Infinity : delta;
    return delta + this.#shifted(until, n, shift) - rest;
  }

  exchange(from: number, middle: number, until: number): void {
    const { order } = this;
    const block = this.#block;
    const count = middle - from;
    for (let k = 0; k < count; k++) block[k] = order[from + k]!;
    for (let k = middle; k < until; k++) order[k - count] = order[k]!;
    for (let k = 0; k < count; k++) order[until - count + k] = block[k]!;
    this.#time(from);
  }

  /** What it costs to let the jobs at two positions, more than one apart, change positions. */
  swapDelta(from: number, to: number, limit: number): number {
    this.#refresh();
    const { order, jobs: n } = this;
    const end = this.#end;
    const setup = this.#setup;
    const before = from === 0 ? n : order[from - 1]!;
    const free = from === 0 ? 0 : end[from - 1]!;
    const a = order[from]!;
    const b = order[to]!;
    const second = order[from + 1]!;
    const last = order[to - 1]!;
    const seconds = this.#seconds;
    const endB = free + setup[before * n + b]! + seconds[b]!;
    const sooner = endB + setup[b * n + second]! - end[from]! - setup[a * n + second]!;
    const endA = end[to - 1]! + sooner + setup[last * n + a]! + seconds[a]!;
    let shift = endA - end[to]!;
    if (to + 1 < n) shift += setup[a * n + order[to + 1]!]! - setup[b * n + order[to + 1]!]!;
    let delta = (this.#weightSetup + this.#weightEnd) * shift;
    const rest = this.#least(to + 1, n, shift);
    const between = this.#least(from + 1, to, sooner);
    delta += this.#at(a, endA) + this.#at(b, endB) + rest + between;
    delta += this.#sum[from]! - this.#sum[from + 1]! + this.#sum[to]! - this.#sum[to + 1]!;
    if (delta > limit) return Infinity;
    delta += this.#shifted(from + 1, to, sooner) - between;
    if (shift === 0 || delta > limit) return delta > limit ? Infinity : delta;
    return delta + this.#shifted(to + 1, n, shift) - rest;
  }

  swap(from: number, to: number): void {
    const a = this.order[from]!;
    this.order[from] = this.order[to]!;
    this.order[to] = a;
    this.#time(from);
  }

  #at(job: number, end: number): number {
    const late = end - this.#due[job]!;
    return this.#flow * end + (late > 0 ? this.#late[job]! * late : 0);
  }

  /** A value that shifting these positions cannot cost less than. */
  #least(from: number, until: number, shift: number): number {
    if (from === until || shift === 0) return 0;
    return this.#tangents.least(from, until, shift) + this.#sum[from]! - this.#sum[until]!;
  }

  #refresh(): void {
    if (this.#stale === this.jobs) return;
    this.#tangents.build(this.order, this.#end, this.#stale);
    this.#stale = this.jobs;
  }

  /** What shifting these positions costs. */
  #shifted(from: number, until: number, shift: number): number {
    const { order } = this;
    const end = this.#end;
    let cost = this.#sum[from]! - this.#sum[until]!;
    for (let k = from; k < until; k++) cost += this.#at(order[k]!, end[k]! + shift);
    return cost;
  }

  /** Times the order from a position on. */
  #time(from: number): void {
    const { order, jobs: n } = this;
    let at = from === 0 ? 0 : this.#end[from - 1]!;
    let before = from === 0 ? n : order[from - 1]!;
    this.#stale = Math.min(this.#stale, from);
    for (let k = from; k < n; k++) {
      const job = order[k]!;
      at += this.#setup[before * n + job]! + this.#seconds[job]!;
      this.#end[k] = at;
      this.#sum[k + 1] = this.#sum[k]! + this.#at(job, at);
      before = job;
    }
    this.objective =
      this.#sum[n]! + this.#weightSetup * (at - this.#worked) + this.#weightEnd * at - this.#given;
  }
}
