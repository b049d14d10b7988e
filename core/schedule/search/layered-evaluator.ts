import type { Problem } from '../problem.ts';
import { finish, intervalAt } from '../working-time.ts';
import { Clock } from './clock.ts';
import { ReadyTimes } from './ready-times.ts';
import { JobCosts } from './job-costs.ts';
import { layersOf, type Layers } from './layers.ts';
import { LiveQueues } from './live-queues.ts';
import { SuffixBound } from './suffix-bound.ts';
import type { MoveEvaluator } from './move-evaluator.ts';

/** Sums of costs are known to about this much. */
const TINY = 1e-6;

/**
 * Evaluates a change by timing only what it touches, for shops whose routings go forward through the machines. Each changed
 * queue is timed from its first changed position until times and setups are as before; a step that then ends at another
 * time makes the queue of the job's next step be looked at from there, if that step feels it. Once the order is as
 * before, the suffix bounds say whether the rest can still bring the change under the limit.
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
  /** Kept values per operation: when its machine was ready for it, the open interval it ends in, state, cost. */
  readonly #able: Float64Array;
  readonly #interval: Int32Array;
  readonly #state: Int32Array;
  readonly #cost: Float64Array;
  readonly #readyTimes: ReadyTimes;
  readonly #suffixBound: SuffixBound;
  readonly #clock = new Clock();
  /** Per machine, the end of its queue: as committed and as tried. */
  readonly #lastEnd: Float64Array;
  readonly #triedEnd: Float64Array;
  /** Per machine: was its queue changed? Else its operations can only become ready at another time. */
  readonly #moved: Uint8Array;
  /** Per machine, the most it may gain by what changed. */
  readonly #most: Float64Array;
  #makespan = 0;
  /** What the ends kept cost for being off the reference plan. */
  #stability = 0;
  #delta = 0;
  #limit = Infinity;
  /** What queues still to time may gain together, at most. */
  #rest = 0;

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    const n = problem.operations;
    this.#problem = problem;
    this.#order = problem.machineOrder!;
    this.#costs = new JobCosts(problem);
    this.#weightChangeover = problem.input.objective.changeover;
    this.#weightMakespan = problem.input.objective.makespan;
    this.end = new Float64Array(n);
    this.#able = new Float64Array(n);
    this.#interval = new Int32Array(n);
    this.#state = new Int32Array(n);
    this.#cost = new Float64Array(n);
    this.#lastEnd = new Float64Array(problem.machines);
    this.#triedEnd = new Float64Array(problem.machines);
    this.#moved = new Uint8Array(problem.machines);
    this.#most = new Float64Array(problem.machines);
    this.live = new LiveQueues(problem, queues);
    this.#readyTimes = new ReadyTimes(problem, this.live, this.#able);
    this.#suffixBound = new SuffixBound(problem, this.live);
    this.#layers = layersOf(problem);
    this.load(queues);
  }

  load(queues: readonly ArrayLike<number>[]): void {
    this.live.load(queues);
    this.#cost.fill(0);
    this.#delta = 0;
    this.#limit = Infinity;
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
    this.#limit = limit + this.#weightMakespan * this.#makespan + this.#stability + TINY;
    if (this.#weightMakespan > 0) this.#triedEnd.set(this.#lastEnd);
    for (let m = 0; m < this.#moved.length; m++) this.#moved[m] = Number(this.#isTouched(m));
    for (let k = 0; k < this.#order.length; k++) {
      const m = this.#order[k]!;
      if (this.#layers.feeds[m] === 1 && this.#isTouched(m) && !this.#time(m, false, this.#feedsLast(k)))
        return Infinity;
    }
    if (!this.#priceLast()) return Infinity;
    if (this.#weightMakespan > 0) this.#delta += this.#weightMakespan * (this.#span() - this.#makespan);
    return this.#delta;
  }

  commit(): void {
    this.objective += this.#delta;
    for (const m of this.#order) if (this.#isTouched(m)) this.#time(m, true, false);
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
      if (feeds || this.#isTouched(m)) this.#suffixBound.renew(m, feeds ? 0 : this.live.from[m]!, feeds);
    }
    this.#readyTimes.commit();
    this.live.commit();
    this.#lastEnd.set(this.#triedEnd);
    this.#stability = this.#costs.stability(this.end);
  }

  #isTouched(m: number): boolean {
    return this.live.from[m]! <= this.live.lengths[m]!;
  }

  /** Seconds from now to the latest end over all queues as tried. */
  #span(): number {
    let latest = -Infinity;
    for (let m = 0; m < this.#triedEnd.length; m++)
      if (this.live.lengths[m]! > 0) latest = Math.max(latest, this.#triedEnd[m]!);
    return Math.max(0, latest - this.#problem.input.now);
  }

  /** Evaluates the queues nothing waits for, those first that may gain most. @returns false when above the limit */
  #priceLast(): boolean {
    let unbounded = 0;
    this.#rest = 0;
    for (const m of this.#layers.last) {
      if (!this.#isTouched(m)) continue;
      const most = this.#mostGain(m);
      this.#most[m] = most;
      if (most === Infinity) unbounded += 1;
      else this.#rest += most;
    }
    for (const m of this.#layers.last)
      if (this.#isTouched(m) && this.#most[m] === Infinity && !this.#time(m, false, --unbounded === 0))
        return false;
    for (const m of this.#layers.last) {
      if (!this.#isTouched(m) || this.#most[m] === Infinity) continue;
      if (this.#delta - this.#rest > this.#limit) return false;
      this.#rest -= this.#most[m]!;
      if (!this.#time(m, false, true)) return false;
    }
    return true;
  }

  /** Does the machine at this place of the order hand on to machines nothing waits for, after all others that hand on? */
  #feedsLast(position: number): boolean {
    for (let k = position + 1; k < this.#order.length; k++) {
      const m = this.#order[k]!;
      if (this.#layers.feeds[m] === 1 && (this.#isTouched(m) || this.#layers.middle)) return false;
    }
    return true;
  }

  /** What a machine can gain by operations that are ready sooner; no bound is known where it closes in between. */
  #mostGain(m: number): number {
    if (this.#moved[m] === 1) return Infinity;
    if (this.#readyTimes.sooner[m] === 0) return 0;
    return this.#suffixBound.closes(m)
      ? Infinity
      : this.#suffixBound.gain(m, this.live.from[m]!, this.#readyTimes.sooner[m]!);
  }

  /**
   * Times one queue from its first changed position; with `commit` the values are kept, else only evaluated.
   * @returns false when the change is surely above the limit (only tried with `mayStop`)
   */
  #time(m: number, commit: boolean, mayStop: boolean): boolean {
    const { ready, before, hasNext, lots } = this.#readyTimes;
    const [queue, length, until] = [this.live.queues[m]!, this.live.lengths[m]!, this.live.until[m]!];
    const settled = Math.max(until, this.#readyTimes.reach[m]!);
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
      const able = clock.now;
      clock.open(ready[o]!);
      const start = clock.now;
      clock.work(seconds[o * this.#order.length + m]!);
      let tight = ready[o]! <= able;
      if (before[o]! !== -Infinity) {
        const lot = this.#readyTimes.lastLot(o, m);
        tight &&= lot <= clock.now;
        clock.pass(Math.max(lot, clock.now));
      }
      end = clock.now;
      const moved = end !== this.end[o]!;
      if (hasNext[o] === 1 && (moved || commit || lots[o] === 1))
        this.#readyTimes.propagate(o, m, start, end);
      const cost = this.#costs.at(o, end) + this.#weightChangeover * changeover;
      this.#delta += cost - this.#cost[o]!;
      const sameSetup = state === this.#state[o]!;
      if (mayStop && sameSetup && p >= until && this.#isTooDear(o, m, p)) return false;
      if (commit) this.#write(o, able, state, cost, tight);
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

  /**
   * Is the change above the limit whatever comes behind operation o at position p, from where on the order is as before?
   * All that comes behind moves with it: it loses at least, or gains at most, what the slopes of its tail say.
   */
  #isTooDear(o: number, m: number, p: number): boolean {
    const { now, interval } = this.#clock;
    const end = this.end[o]!;
    const position = this.#suffixBound.positionKept(m, p + 1);
    let least = this.#delta;
    if (now > end)
      least += this.#suffixBound.loss(
        m,
        position,
        this.#suffixBound.openBetween(m, this.#interval[o]!, end, interval, now),
      );
    if (least <= this.#limit) return false;
    const eased = p < this.#readyTimes.reach[m]! ? this.#readyTimes.sooner[m]! : 0;
    return least - this.#mostBehind(m, position, Math.max(end - now, eased)) > this.#limit;
  }

  /** The most that may still be gained from a position on, sooner by up to so many seconds, and in queues still to time. */
  #mostBehind(m: number, position: number, seconds: number): number {
    const feeds = this.#layers.feeds[m] === 1;
    if (seconds > 0 && (feeds || this.#suffixBound.closes(m))) return Infinity;
    let most = feeds ? 0 : this.#rest;
    if (feeds) for (const n of this.#layers.last) most += this.#mostGain(n);
    return seconds > 0 ? most + this.#suffixBound.gain(m, position, seconds) : most;
  }

  /** Keeps the times of an operation that the clock has just come to the end of. */
  #write(o: number, able: number, state: number, cost: number, tight: boolean): void {
    const { ready, hasNext, lots } = this.#readyTimes;
    const end = this.#clock.now;
    this.#able[o] = able;
    this.end[o] = end;
    this.#interval[o] = this.#clock.interval;
    this.#state[o] = state;
    this.#cost[o] = cost;
    this.#suffixBound.slope[o] = this.#costs.slope(o, end);
    this.#suffixBound.tight[o] = Number(tight);
    this.#suffixBound.waits[o] = Number(
      hasNext[o - 1] === 1 && lots[o - 1] === 0 && ready[o]! > able && ready[o] === this.end[o - 1],
    );
  }

  /** An operation already running: fixed, it is timed once. */
  #timeStarted(o: number, m: number): void {
    const { input, open, seconds, startedAt, setups, initialState, machines } = this.#problem;
    const { before, hasNext } = this.#readyTimes;
    const own = Math.max(input.now, finish(open[m]!, startedAt[o]!, seconds[o * machines + m]!));
    const end = before[o] === -Infinity ? own : Math.max(own, this.#readyTimes.lastLot(o, m));
    const state = setups[m]!.after(initialState[m]!, setups[m]!.classOf[o]!);
    const cost = this.#costs.at(o, end);
    if (hasNext[o] === 1) this.#readyTimes.propagate(o, m, startedAt[o]!, end);
    this.#delta += cost - this.#cost[o]!;
    this.#clock.set(open[m]!, end, intervalAt(open[m]!, end));
    this.#write(o, end, state, cost, false);
  }
}
