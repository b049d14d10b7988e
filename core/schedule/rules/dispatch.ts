import { nameQueues } from '../decode.ts';
import type { Problem, Queues } from '../problem.ts';
import { emptyTiming, readyAt, timeOperation } from '../timing.ts';

/** What a rule may look at when a machine is free to take an operation. */
export interface Choice {
  readonly operation: number;
  readonly machine: number;
  /** The instant of the decision. */
  readonly at: number;
  /** Changeover seconds this operation would need next on this machine. */
  readonly changeover: number;
}

/** How urgent a choice is: the largest goes first; equal ones go in the order of the input. */
export type Urgency = (choice: Choice) => number;

/**
 * Builds queues by letting machines choose: always the machine that can begin first takes, of the operations ready by
 * then, the most urgent (a non-delay dispatch; M. L. Pinedo, Scheduling, ch. 14, from memory). Started and frozen
 * operations come first, pins keep their rank. Where fixed operations wait for each other, the rest is listed as it comes.
 */
export function dispatch(problem: Problem, urgency: Urgency): Queues {
  return nameQueues(problem, new Dispatcher(problem, urgency).run());
}

class Dispatcher {
  readonly #problem: Problem;
  readonly #urgency: Urgency;
  readonly #timing;
  readonly #queues: number[][];
  readonly #free: Float64Array;
  readonly #states: Int32Array;
  /** Operations whose step before is placed and that are free to go anywhere able, per machine. */
  readonly #waiting: Set<number>[];
  readonly #ready: Float64Array;
  readonly #done: Uint8Array;

  constructor(problem: Problem, urgency: Urgency) {
    this.#problem = problem;
    this.#urgency = urgency;
    this.#timing = emptyTiming(problem);
    this.#queues = Array.from({ length: problem.machines }, () => []);
    this.#free = Float64Array.from(problem.availableFrom);
    this.#states = Int32Array.from(problem.initialState);
    this.#waiting = Array.from({ length: problem.machines }, () => new Set());
    this.#ready = new Float64Array(problem.operations);
    this.#done = new Uint8Array(problem.operations);
    for (let j = 0; j < problem.jobs; j++) this.#release(problem.firstOf[j]!);
  }

  run(): number[][] {
    for (let choice = this.#next(); choice !== null; choice = this.#next()) this.#place(choice);
    for (let o = 0; o < this.#problem.operations; o++)
      if (!this.#done[o]) this.#queues[this.#home(o)]!.push(o);
    return this.#queues;
  }

  #home(o: number): number {
    const { front, pins, eligible } = this.#problem;
    const fixedOn = front.findIndex(
      (ids, m) => ids.includes(o) || pins[m]!.some((pin) => pin.operation === o),
    );
    return fixedOn >= 0 ? fixedOn : eligible[o]![0]!;
  }

  #release(o: number): void {
    this.#ready[o] = readyAt(this.#problem, this.#timing, o);
    if (this.#problem.fixed[o]) return;
    for (const m of this.#problem.eligible[o]!) this.#waiting[m]!.add(o);
  }

  /** The operation that must come next on this machine, if its place is fixed. */
  #due(m: number): number | undefined {
    const { front, pins } = this.#problem;
    const rank = this.#queues[m]!.length;
    if (rank < front[m]!.length) return front[m]![rank];
    const left = pins[m]!.filter((pin) => !this.#done[pin.operation]);
    const first = left[0];
    return first !== undefined && (first.rank <= rank || this.#waiting[m]!.size === 0)
      ? first.operation
      : undefined;
  }

  #isReady(o: number): boolean {
    return this.#problem.firstOf[this.#problem.jobOf[o]!] === o || this.#done[o - 1] === 1;
  }

  #next(): Choice | null {
    let best: Choice | null = null;
    for (let m = 0; m < this.#problem.machines; m++) {
      const due = this.#due(m);
      const options = due === undefined ? this.#waiting[m]! : this.#isReady(due) ? [due] : [];
      let soonest = Infinity;
      for (const o of options) soonest = Math.min(soonest, this.#ready[o]!);
      const at = Math.max(soonest, this.#free[m]!);
      if (at < (best?.at ?? Infinity)) best = this.#mostUrgent(m, at, options);
    }
    return best;
  }

  #mostUrgent(machine: number, at: number, options: Iterable<number>): Choice {
    const setup = this.#problem.setups[machine]!;
    const row = setup.row(this.#states[machine]!);
    let best: Choice | null = null;
    let most = -Infinity;
    for (const operation of options) {
      if (this.#ready[operation]! > at) continue;
      const choice = { operation, machine, at, changeover: row[setup.classOf[operation]!]! };
      const urgency = this.#urgency(choice);
      if (best !== null && (urgency < most || (urgency === most && operation > best.operation))) continue;
      best = choice;
      most = urgency;
    }
    return best!;
  }

  #place({ operation, machine, changeover }: Choice): void {
    const { eligible, setups, firstOf, jobOf } = this.#problem;
    timeOperation(this.#problem, this.#timing, operation, machine, this.#free[machine]!, changeover);
    const setup = setups[machine]!;
    this.#states[machine] = setup.after(this.#states[machine]!, setup.classOf[operation]!);
    this.#free[machine] = Math.max(this.#free[machine]!, this.#timing.end[operation]!);
    this.#queues[machine]!.push(operation);
    this.#done[operation] = 1;
    for (const m of eligible[operation]!) this.#waiting[m]!.delete(operation);
    if (operation + 1 < firstOf[jobOf[operation]! + 1]!) this.#release(operation + 1);
  }
}
