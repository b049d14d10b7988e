import type { Problem } from '../problem.ts';
import { finish, intervalAt } from '../working-time.ts';
import { JobCosts } from './job-costs.ts';
import { LiveQueues } from './live-queues.ts';
import type { Trial } from './trial.ts';

/**
 * Prices a change by timing only what it touches, for shops whose routings go forward through the machines. Each changed
 * queue is timed from its first changed place until times and setups are as before; a step that then ends at another
 * time makes the queue of the job's next step be looked at from there, if that step feels it.
 */
export class LayeredTrial implements Trial {
  readonly live: LiveQueues;
  readonly end: Float64Array;
  objective = 0;
  work = 0;
  readonly #problem: Problem;
  readonly #order: Int32Array;
  readonly #costs: JobCosts;
  readonly #weightChangeover: number;
  readonly #weightMakespan: number;
  /** Does any operation this machine can do have a next step? */
  readonly #feeds: Uint8Array;
  readonly #hasNext: Uint8Array;
  readonly #lots: Uint8Array;
  /** Kept values per operation: when its machine was ready for it, the open interval it ends in, state, cost. */
  readonly #able: Float64Array;
  readonly #slot: Int32Array;
  readonly #state: Int32Array;
  readonly #cost: Float64Array;
  /** When the job lets the operation start, and when the step before ends; as tried, with a log to take back. */
  readonly #ready: Float64Array;
  readonly #before: Float64Array;
  readonly #logOperation: Int32Array;
  readonly #logReady: Float64Array;
  readonly #logBefore: Float64Array;
  #logged = 0;
  /** Last place per machine whose operation became ready at another time. */
  readonly #reach: Int32Array;
  /** Per machine, the end of its queue: as kept and as tried. */
  readonly #lastEnd: Float64Array;
  readonly #triedEnd: Float64Array;
  /** Machines nothing waits for. */
  readonly #lastMachines: Int32Array;
  /** Per machine: was its queue changed, or may one of its operations start sooner? Else it can only be delayed. */
  readonly #eased: Uint8Array;
  #makespan = 0;
  /** What the ends kept cost for being off the reference plan. */
  #disturbance = 0;
  #delta = 0;
  #limit = Infinity;

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    const n = problem.operations;
    this.#problem = problem;
    this.#order = problem.machineOrder!;
    this.#costs = new JobCosts(problem);
    this.#weightChangeover = problem.input.objective.changeover;
    this.#weightMakespan = problem.input.objective.makespan;
    this.#hasNext = Uint8Array.from({ length: n }, (_, o) =>
      Number(o + 1 < problem.firstOf[problem.jobOf[o]! + 1]!),
    );
    this.#lots = Uint8Array.from({ length: n }, (_, o) =>
      Number(this.#hasNext[o] === 1 && problem.transferShare[o]! < 1),
    );
    this.#feeds = new Uint8Array(problem.machines);
    problem.eligible.forEach((machines, o) =>
      machines.forEach((m) => (this.#feeds[m]! |= this.#hasNext[o]!)),
    );
    this.#lastMachines = this.#order.filter((m) => this.#feeds[m] === 0);
    this.#eased = new Uint8Array(problem.machines);
    this.end = new Float64Array(n);
    this.#able = new Float64Array(n);
    this.#slot = new Int32Array(n);
    this.#state = new Int32Array(n);
    this.#cost = new Float64Array(n);
    this.#ready = new Float64Array(n).fill(NaN);
    this.#before = new Float64Array(n).fill(-Infinity);
    this.#logOperation = new Int32Array(n);
    this.#logReady = new Float64Array(n);
    this.#logBefore = new Float64Array(n);
    this.#reach = new Int32Array(problem.machines).fill(-1);
    this.#lastEnd = new Float64Array(problem.machines);
    this.#triedEnd = new Float64Array(problem.machines);
    this.live = new LiveQueues(problem, queues);
    this.load(queues);
  }

  load(queues: readonly ArrayLike<number>[]): void {
    const { firstOf, release, jobs, machines } = this.#problem;
    this.live.load(queues);
    for (let j = 0; j < jobs; j++) this.#ready[firstOf[j]!] = release[j]!;
    this.#cost.fill(0);
    this.#delta = 0;
    this.#limit = Infinity;
    for (let m = 0; m < machines; m++) {
      this.live.from[m] = 0;
      this.live.until[m] = this.live.lengths[m]!;
      this.#triedEnd[m] = -Infinity;
    }
    for (const m of this.#order) this.#scan(m, true, false);
    this.#makespan = this.#span();
    this.objective = this.#delta + this.#weightMakespan * this.#makespan;
    this.#settle();
  }

  price(limit: number): number {
    const { live } = this;
    live.restorePins();
    this.#delta = 0;
    // The makespan is only known at the end, and a job may come nearer to its reference: all that may still be gained.
    this.#limit = limit + this.#weightMakespan * this.#makespan + this.#disturbance;
    if (this.#weightMakespan > 0) this.#triedEnd.set(this.#lastEnd);
    for (const m of this.#order) this.#eased[m] = Number(this.#isTouched(m));
    for (const m of this.#order) if (this.#feeds[m] === 1 && this.#isTouched(m)) this.#scan(m, false, false);
    // Queues that may gain go first: what the others add can only be a loss.
    let gaining = 0;
    for (const m of this.#lastMachines) if (this.#eased[m] === 1 && this.#isTouched(m)) gaining += 1;
    for (const m of this.#lastMachines)
      if (this.#eased[m] === 1 && this.#isTouched(m) && !this.#scan(m, false, --gaining === 0))
        return Infinity;
    for (const m of this.#lastMachines)
      if (this.#eased[m] === 0 && this.#isTouched(m) && !this.#scan(m, false, true)) return Infinity;
    if (this.#weightMakespan > 0) this.#delta += this.#weightMakespan * (this.#span() - this.#makespan);
    return this.#delta;
  }

  keep(): void {
    this.objective += this.#delta;
    for (const m of this.#order) if (this.#isTouched(m)) this.#scan(m, true, false);
    if (this.#weightMakespan > 0) this.#makespan = this.#span();
    this.#settle();
  }

  undo(): void {
    while (this.#logged > 0) {
      this.#logged -= 1;
      const o = this.#logOperation[this.#logged]!;
      this.#ready[o] = this.#logReady[this.#logged]!;
      this.#before[o] = this.#logBefore[this.#logged]!;
    }
    this.live.undo();
    this.#reach.fill(-1);
  }

  #settle(): void {
    this.#logged = 0;
    this.live.keep();
    this.#reach.fill(-1);
    this.#lastEnd.set(this.#triedEnd);
    this.#disturbance = this.#costs.disturbance(this.end);
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

  /**
   * Times one queue from its first changed place; with `keep` the values are kept, else only priced.
   * @returns false when the change is surely above the limit (only tried with `mayStop`: no queue still to time can
   *   gain, so what a delay has cost so far can only grow)
   */
  #scan(m: number, keep: boolean, mayStop: boolean): boolean {
    const queue = this.live.queues[m]!;
    const length = this.live.lengths[m]!;
    const settled = Math.max(this.live.until[m]!, this.#reach[m]!);
    const delayed = this.#eased[m] === 1 ? settled : 0;
    const setup = this.#problem.setups[m]!;
    const { start: opens, end: closes } = this.#problem.open[m]!;
    let p = this.live.from[m]!;
    if (p === 0 && length > 0 && !Number.isNaN(this.#problem.startedAt[queue[0]!]!))
      this.#timeStarted(queue[p++]!, m);
    const previous = p > 0 ? queue[p - 1]! : -1;
    let latest = p > 0 ? this.end[previous]! : -Infinity;
    let t = Math.max(latest, this.#problem.availableFrom[m]!);
    let slot = p > 0 ? this.#slot[previous]! : 0;
    while (closes[slot]! < t) slot += 1;
    let state = p > 0 ? this.#state[previous]! : this.#problem.initialState[m]!;
    for (; p < length; p++) {
      const o = queue[p]!;
      const kind = setup.classOf[o]!;
      const changeover = (setup.seconds[state] ?? setup.row(state))[kind]!;
      state = setup.complete ? kind : setup.after(state, kind);
      this.work += 1;
      let left = changeover;
      if (left > 0) {
        if (opens[slot]! > t) t = opens[slot]!;
        for (; left > closes[slot]! - t; t = opens[++slot]!) left -= closes[slot]! - t;
        t += left;
      }
      const able = t;
      if (this.#ready[o]! > t) t = this.#ready[o]!;
      while (closes[slot]! <= t) slot += 1;
      if (opens[slot]! > t) t = opens[slot]!;
      const start = t;
      left = this.#problem.seconds[o * this.#order.length + m]!;
      for (; left > closes[slot]! - t; t = opens[++slot]!) left -= closes[slot]! - t;
      t += left;
      if (this.#before[o]! !== -Infinity) {
        t = Math.max(t, this.#lastLot(o, m));
        while (closes[slot]! < t) slot += 1;
      }
      if (this.#hasNext[o] === 1) this.#passOn(o, m, start, t);
      const cost = this.#costs.at(o, t) + this.#weightChangeover * changeover;
      this.#delta += cost - this.#cost[o]!;
      const sameSetup = state === this.#state[o]!;
      const same = sameSetup && p >= settled && t === this.end[o]!;
      if (mayStop && this.#delta > this.#limit && p >= delayed && sameSetup && t >= this.end[o]!)
        return false;
      if (keep) this.#write(o, able, t, slot, state, cost);
      if (same) return true;
      latest = t;
    }
    this.#triedEnd[m] = latest;
    return true;
  }

  #write(o: number, able: number, end: number, slot: number, state: number, cost: number): void {
    this.#able[o] = able;
    this.end[o] = end;
    this.#slot[o] = slot;
    this.#state[o] = state;
    this.#cost[o] = cost;
  }

  /** An operation already running: fixed, it is timed once. */
  #timeStarted(o: number, m: number): void {
    const { input, open, seconds, startedAt, setups, initialState, machines } = this.#problem;
    const own = Math.max(input.now, finish(open[m]!, startedAt[o]!, seconds[o * machines + m]!));
    const end = this.#before[o] === -Infinity ? own : Math.max(own, this.#lastLot(o, m));
    const state = setups[m]!.after(initialState[m]!, setups[m]!.classOf[o]!);
    const cost = this.#costs.at(o, end);
    if (this.#hasNext[o] === 1) this.#passOn(o, m, startedAt[o]!, end);
    this.#delta += cost - this.#cost[o]!;
    this.#write(o, end, end, intervalAt(open[m]!, end), state, cost);
  }

  #lastLot(o: number, m: number): number {
    const lot = Math.ceil(
      this.#problem.transferShare[o - 1]! * this.#problem.seconds[o * this.#order.length + m]!,
    );
    return finish(this.#problem.open[m]!, this.#before[o]!, lot);
  }

  /** Tells the job's next step when it may start; its queue is timed again only where the step feels it. */
  #passOn(o: number, m: number, start: number, end: number): void {
    const next = o + 1;
    const lots = this.#lots[o] === 1;
    const lot = lots
      ? Math.ceil(this.#problem.transferShare[o]! * this.#problem.seconds[o * this.#order.length + m]!)
      : 0;
    const handed = lots ? finish(this.#problem.open[m]!, start, lot) : end;
    const ready = Math.max(this.#problem.release[this.#problem.jobOf[o]!]!, handed);
    const before = lots ? end : -Infinity;
    const old = this.#ready[next]!;
    const oldBefore = this.#before[next]!;
    if (ready === old && before === oldBefore) return;
    this.#logOperation[this.#logged] = next;
    this.#logReady[this.#logged] = old;
    this.#logBefore[this.#logged] = oldBefore;
    this.#logged += 1;
    this.#ready[next] = ready;
    this.#before[next] = before;
    const n = this.live.home[next]!;
    if (ready < old || before < oldBefore) this.#eased[n] = 1;
    if (!lots && ready <= this.#able[next]! && old <= this.#able[next]!) return;
    const rank = this.live.rank[next]!;
    if (rank < this.live.from[n]!) this.live.from[n] = rank;
    if (rank > this.#reach[n]!) this.#reach[n] = rank;
  }
}
