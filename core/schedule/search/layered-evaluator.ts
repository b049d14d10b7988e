import type { Problem } from '../problem.ts';
import { finish, intervalAt } from '../working-time.ts';
import { Clock } from './clock.ts';
import { EarlyStop } from './early-stop.ts';
import { JobCosts } from './job-costs.ts';
import { layersOf, type Layers } from './layers.ts';
import { LiveQueues } from './live-queues.ts';
import { ReadyTimes } from './ready-times.ts';
import { SuffixBound } from './suffix-bound.ts';
import type { MoveEvaluator } from './move-evaluator.ts';

/** Sums of costs are known to about this much. */
const TINY = 1e-6;

/**
 * Evaluates a move by timing only what it touches, for shops whose routings go forward through the machines. Machine by
 * machine in that order, each changed queue is timed from its first changed position until ends and setups are as before;
 * an operation that ends at another time changes the ready time of its job's next step, whose queue is then timed from
 * there. Once the order is as before, `EarlyStop` says whether the rest can still bring the cost down to the limit.
 *
 *     delta = Σ over operations timed of (cost now − cost as committed) + weight × (makespan now − as committed)
 *
 * Worked out by hand: a machine M with A (4 s), B (2 s), C (3 s) in its queue, a machine N with the second step of B
 * (5 s, due 8); always open, no changeovers, weights 1. B ahead of A on M:
 *
 *     committed   M: A 0–4, B 4–6, C 6–9    N: B 6–11, 3 s late, cost 3
 *     M           B 0–2: its next step is ready at 2, not 6; A 2–6; C 6–9, as before: what is behind it is not timed
 *     N           B 2–7: on time, cost 0
 *
 * delta is 0 − 3 = −3, the gain 3.
 */
export class LayeredEvaluator implements MoveEvaluator {
  readonly live: LiveQueues;
  readonly end: Float64Array;
  objective = 0;
  work = 0;
  readonly #problem: Problem;
  readonly #order: Int32Array;
  readonly #costs: JobCosts;
  readonly #weightChangeover: number;
  readonly #weightMakespan: number;
  readonly #layers: Layers;
  /** As committed, per operation: when its machine was ready for it, the open interval it ends in, setup after it, cost. */
  readonly #machineReady: Float64Array;
  readonly #interval: Int32Array;
  readonly #state: Int32Array;
  readonly #cost: Float64Array;
  readonly #readyTimes: ReadyTimes;
  readonly #suffixBound: SuffixBound;
  readonly #clock = new Clock();
  /** Per machine, the end of its queue: as committed and as tried. */
  readonly #lastEnd: Float64Array;
  readonly #triedEnd: Float64Array;
  readonly #earlyStop: EarlyStop;
  #makespan = 0;
  /** What the ends as committed cost for being off the reference plan. */
  #stability = 0;
  #delta = 0;

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    const n = problem.operations;
    this.#problem = problem;
    this.#order = problem.machineOrder!;
    this.#costs = new JobCosts(problem);
    this.#weightChangeover = problem.input.objective.changeover;
    this.#weightMakespan = problem.input.objective.makespan;
    this.end = new Float64Array(n);
    this.#machineReady = new Float64Array(n);
    this.#interval = new Int32Array(n);
    this.#state = new Int32Array(n);
    this.#cost = new Float64Array(n);
    this.#lastEnd = new Float64Array(problem.machines);
    this.#triedEnd = new Float64Array(problem.machines);
    this.live = new LiveQueues(problem, queues);
    this.#readyTimes = new ReadyTimes(problem, this.live, this.#machineReady);
    this.#suffixBound = new SuffixBound(problem, this.live);
    this.#layers = layersOf(problem);
    this.#earlyStop = new EarlyStop(problem.machines, {
      live: this.live,
      layers: this.#layers,
      readyTimes: this.#readyTimes,
      suffixBound: this.#suffixBound,
      end: this.end,
      interval: this.#interval,
    });
    this.load(queues);
  }

  load(queues: readonly ArrayLike<number>[]): void {
    this.live.load(queues);
    this.#cost.fill(0);
    this.#delta = 0;
    for (const m of this.#order) {
      this.live.from[m] = 0;
      this.live.until[m] = this.live.lengths[m]!;
      this.#triedEnd[m] = -Infinity;
    }
    for (const m of this.#order) this.#time(m, true, false);
    this.#makespan = this.#span();
    this.objective = this.#delta + this.#weightMakespan * this.#makespan;
    this.#settle();
  }

  evaluate(limit: number): number {
    this.live.restorePins();
    this.#delta = 0;
    // The makespan is only known at the end, and a job may come nearer to its reference: all that may still be gained.
    this.#earlyStop.begin(limit + this.#weightMakespan * this.#makespan + this.#stability + TINY);
    if (this.#weightMakespan > 0) this.#triedEnd.set(this.#lastEnd);
    for (let k = 0; k < this.#order.length; k++) {
      const m = this.#order[k]!;
      if (this.#layers.feeds[m] === 1 && this.live.isTouched(m) && !this.#time(m, false, this.#feedsLast(k)))
        return Infinity;
    }
    if (!this.#evaluateLast()) return Infinity;
    if (this.#weightMakespan > 0) this.#delta += this.#weightMakespan * (this.#span() - this.#makespan);
    return this.#delta;
  }

  commit(): void {
    this.objective += this.#delta;
    for (const m of this.#order) if (this.live.isTouched(m)) this.#time(m, true, false);
    if (this.#weightMakespan > 0) this.#makespan = this.#span();
    this.#settle();
  }

  rollback(): void {
    this.#readyTimes.rollback();
    this.live.rollback();
  }

  #settle(): void {
    for (let k = this.#order.length - 1; k >= 0; k--) {
      const m = this.#order[k]!;
      const feeds = this.#layers.feeds[m] === 1;
      if (feeds || this.live.isTouched(m)) this.#suffixBound.renew(m, feeds ? 0 : this.live.from[m]!, feeds);
    }
    this.#readyTimes.commit();
    this.live.commit();
    this.#lastEnd.set(this.#triedEnd);
    this.#stability = this.#costs.stability(this.end);
  }

  /** Seconds from now to the latest end over all queues as tried. */
  #span(): number {
    let latest = -Infinity;
    for (let m = 0; m < this.#triedEnd.length; m++)
      if (this.live.lengths[m]! > 0) latest = Math.max(latest, this.#triedEnd[m]!);
    return Math.max(0, latest - this.#problem.input.now);
  }

  /** Evaluates the queues nothing waits for, those first that may gain most. @returns false when the move is rejected */
  #evaluateLast(): boolean {
    const stop = this.#earlyStop;
    let unbounded = stop.boundLast();
    for (const m of this.#layers.last)
      if (this.live.isTouched(m) && !stop.isBounded(m) && !this.#time(m, false, --unbounded === 0))
        return false;
    for (const m of this.#layers.last) {
      if (!this.live.isTouched(m) || !stop.isBounded(m)) continue;
      if (!stop.proceedTo(m, this.#delta) || !this.#time(m, false, true)) return false;
    }
    return true;
  }

  /** Does the machine at this position of the order feed machines nothing waits for, as the last of those that feed any? */
  #feedsLast(position: number): boolean {
    for (let k = position + 1; k < this.#order.length; k++) {
      const m = this.#order[k]!;
      if (this.#layers.feeds[m] === 1 && (this.live.isTouched(m) || this.#layers.middle)) return false;
    }
    return true;
  }

  /**
   * Times one queue from its first changed position; with `commit` the values are committed, else only evaluated.
   * @returns false when the move is rejected (only looked at with `mayStop`)
   */
  #time(m: number, commit: boolean, mayStop: boolean): boolean {
    const { ready, endBefore, hasNext, inLots } = this.#readyTimes;
    const [queue, length, until] = [this.live.queues[m]!, this.live.lengths[m]!, this.live.until[m]!];
    const settled = Math.max(until, this.#readyTimes.affectedUntil[m]!);
    const [clock, seconds, setup] = [this.#clock, this.#problem.seconds, this.#problem.setups[m]!];
    const { classOf, complete, seconds: rows } = setup;
    let p = this.live.from[m]!;
    if (p === 0 && length > 0 && !Number.isNaN(this.#problem.startedAt[queue[0]!]!))
      this.#timeStarted(queue[p++]!, m);
    let state = this.#startBehind(p > 0 ? queue[p - 1]! : -1, m);
    let end = p > 0 ? this.end[queue[p - 1]!]! : -Infinity;
    for (; p < length; p++) {
      const o = queue[p]!;
      const kind = classOf[o]!;
      const changeover = (rows[state] ?? setup.row(state))[kind]!;
      state = complete ? kind : setup.after(state, kind);
      this.work += 1;
      if (changeover > 0) clock.work(changeover);
      const machineReady = clock.now;
      clock.open(ready[o]!);
      const start = clock.now;
      clock.work(seconds[o * this.#order.length + m]!);
      let tight = ready[o]! <= machineReady;
      if (endBefore[o]! !== -Infinity) {
        const lot = this.#readyTimes.lastLotEnd(o, m);
        tight &&= lot <= clock.now;
        clock.pass(Math.max(lot, clock.now));
      }
      end = clock.now;
      const moved = end !== this.end[o]!;
      if (hasNext[o] === 1 && (moved || commit || inLots[o] === 1))
        this.#readyTimes.propagate(o, m, start, end);
      const cost = this.#costs.at(o, end) + this.#weightChangeover * changeover;
      this.#delta += cost - this.#cost[o]!;
      const sameSetup = state === this.#state[o]!;
      if (mayStop && sameSetup && p >= until && this.#earlyStop.rejects(this.#delta, o, m, p, clock))
        return false;
      if (commit) this.#write(o, machineReady, state, cost, tight);
      if (sameSetup && p >= settled && !moved) return true;
    }
    this.#triedEnd[m] = end;
    return true;
  }

  /** Sets the clock to when the machine is done with an operation (−1: to when it can begin). @returns its setup then */
  #startBehind(previous: number, m: number): number {
    const { availableFrom, initialState, open } = this.#problem;
    const free = availableFrom[m]!;
    if (previous < 0) this.#clock.set(open[m]!, free, 0);
    else this.#clock.set(open[m]!, Math.max(this.end[previous]!, free), this.#interval[previous]!);
    return previous < 0 ? initialState[m]! : this.#state[previous]!;
  }

  /** Commits the times of an operation that the clock has just come to the end of. */
  #write(o: number, machineReady: number, state: number, cost: number, tight: boolean): void {
    const { ready, hasNext, inLots } = this.#readyTimes;
    const end = this.#clock.now;
    this.#machineReady[o] = machineReady;
    this.end[o] = end;
    this.#interval[o] = this.#clock.interval;
    this.#state[o] = state;
    this.#cost[o] = cost;
    this.#suffixBound.slope[o] = this.#costs.slope(o, end);
    this.#suffixBound.tight[o] = Number(tight);
    this.#suffixBound.waits[o] = Number(
      hasNext[o - 1] === 1 && inLots[o - 1] === 0 && ready[o]! > machineReady && ready[o] === this.end[o - 1],
    );
  }

  /** An operation already running: fixed, it is timed once. */
  #timeStarted(o: number, m: number): void {
    const { input, open, seconds, startedAt, setups, initialState, machines } = this.#problem;
    const { endBefore, hasNext } = this.#readyTimes;
    const own = Math.max(input.now, finish(open[m]!, startedAt[o]!, seconds[o * machines + m]!));
    const end = endBefore[o] === -Infinity ? own : Math.max(own, this.#readyTimes.lastLotEnd(o, m));
    const state = setups[m]!.after(initialState[m]!, setups[m]!.classOf[o]!);
    const cost = this.#costs.at(o, end);
    if (hasNext[o] === 1) this.#readyTimes.propagate(o, m, startedAt[o]!, end);
    this.#delta += cost - this.#cost[o]!;
    this.#clock.set(open[m]!, end, intervalAt(open[m]!, end));
    this.#write(o, end, state, cost, false);
  }
}
