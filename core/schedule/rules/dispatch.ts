import { nameQueues } from '../decode.ts';
import type { Problem, Queues } from '../problem.ts';
import { SparseSet } from './sparse-set.ts';
import { emptyTiming, readyAt, timeOperation } from '../timing.ts';

/**
 * How urgent an operation is when a machine is free to take it: the largest goes first; equal ones go in the order of the
 * input.
 * @param changeover seconds it would need next on this machine
 * @param at the instant of the choice
 */
export type Urgency = (operation: number, machine: number, changeover: number, at: number) => number;

/** Operations looked at between two yields: a few milliseconds. */
const YIELD_EVERY = 250_000;

interface Choice {
  readonly operation: number;
  readonly machine: number;
  readonly changeover: number;
}

/**
 * Builds queues by letting machines choose: always the machine that can begin first takes, of the operations ready by
 * then, the most urgent (a non-delay dispatch; M. L. Pinedo, Scheduling, ch. 14, from memory). Started and frozen
 * operations come first, pins keep their position. Where fixed operations wait for each other, the rest is appended in order.
 * It yields every few milliseconds of work.
 * @returns operation numbers by machine
 */
export function dispatchSteps(problem: Problem, urgency: Urgency): Generator<void, number[][]> {
  return new Dispatcher(problem, urgency).run();
}

/** The same at one go, by name. */
export function dispatch(problem: Problem, urgency: Urgency): Queues {
  const steps = dispatchSteps(problem, urgency);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return nameQueues(problem, step.value);
}

class Dispatcher {
  readonly #problem: Problem;
  readonly #urgency: Urgency;
  readonly #timing;
  readonly #queues: number[][];
  readonly #free: Float64Array;
  readonly #states: Int32Array;
  /**
   * Operations whose step before is placed and that may go on a machine: those ready by the time it is free, and those
   * still to come. Apart, so that a choice looks only at what it can choose.
   */
  readonly #waiting: readonly SparseSet[];
  readonly #coming: readonly SparseSet[];
  readonly #ready: Float64Array;
  readonly #done: Uint8Array;
  /** Operations looked at so far. */
  #looked = 0;

  constructor(problem: Problem, urgency: Urgency) {
    this.#problem = problem;
    this.#urgency = urgency;
    this.#timing = emptyTiming(problem);
    this.#queues = Array.from({ length: problem.machines }, () => []);
    this.#free = Float64Array.from(problem.availableFrom);
    this.#states = Int32Array.from(problem.initialState);
    this.#waiting = Array.from({ length: problem.machines }, () => new SparseSet(problem.operations));
    this.#coming = Array.from({ length: problem.machines }, () => new SparseSet(problem.operations));
    this.#ready = new Float64Array(problem.operations);
    this.#done = new Uint8Array(problem.operations);
    for (let j = 0; j < problem.jobs; j++) this.#release(problem.firstOf[j]!);
  }

  *run(): Generator<void, number[][]> {
    let nextYield = YIELD_EVERY;
    for (let choice = this.#next(); choice !== null; choice = this.#next()) {
      this.#place(choice);
      if (this.#looked < nextYield) continue;
      nextYield = this.#looked + YIELD_EVERY;
      yield;
    }
    for (let o = 0; o < this.#problem.operations; o++)
      if (!this.#done[o]) this.#queues[this.#machineFor(o)]!.push(o);
    return this.#queues;
  }

  #machineFor(o: number): number {
    const { front, pins, eligible } = this.#problem;
    const fixedOn = front.findIndex(
      (ids, m) => ids.includes(o) || pins[m]!.some((pin) => pin.operation === o),
    );
    return fixedOn >= 0 ? fixedOn : eligible[o]![0]!;
  }

  #release(o: number): void {
    this.#ready[o] = readyAt(this.#problem, this.#timing, o);
    if (this.#problem.fixed[o]) return;
    for (const m of this.#problem.eligible[o]!)
      (this.#ready[o]! <= this.#free[m]! ? this.#waiting : this.#coming)[m]!.add(o);
  }

  /** The operation that must come next on this machine, if its position is fixed. */
  #due(m: number): number | undefined {
    const { front, pins } = this.#problem;
    const position = this.#queues[m]!.length;
    if (position < front[m]!.length) return front[m]![position];
    const first = pins[m]!.find((pin) => !this.#done[pin.operation]);
    const idle = this.#waiting[m]!.size + this.#coming[m]!.size === 0;
    return first !== undefined && (first.position <= position || idle) ? first.operation : undefined;
  }

  #isReady(o: number): boolean {
    return this.#problem.firstOf[this.#problem.jobOf[o]!] === o || this.#done[o - 1] === 1;
  }

  #next(): Choice | null {
    let machine = -1;
    let at = Infinity;
    for (let m = 0; m < this.#problem.machines; m++) {
      const soonest = this.#soonest(m);
      if (soonest < at) [machine, at] = [m, soonest];
    }
    return machine < 0 ? null : this.#choice(machine, at);
  }

  /** When the machine could take an operation next. */
  #soonest(m: number): number {
    const due = this.#due(m);
    if (due !== undefined) return this.#isReady(due) ? Math.max(this.#ready[due]!, this.#free[m]!) : Infinity;
    if (this.#waiting[m]!.size > 0) return this.#free[m]!;
    let soonest = Infinity;
    const { members, size } = this.#coming[m]!;
    this.#looked += size;
    for (let k = 0; k < size; k++) soonest = Math.min(soonest, this.#ready[members[k]!]!);
    return Math.max(soonest, this.#free[m]!);
  }

  #choice(machine: number, at: number): Choice {
    const due = this.#due(machine);
    const operation = due ?? this.#mostUrgent(machine, at);
    const setup = this.#problem.setups[machine]!;
    return { operation, machine, changeover: setup.row(this.#states[machine]!)[setup.classOf[operation]!]! };
  }

  #mostUrgent(machine: number, at: number): number {
    const waiting = this.#waiting[machine]!;
    const coming = this.#coming[machine]!;
    this.#looked += waiting.size + coming.size;
    for (let k = coming.size - 1; k >= 0; k--) {
      const o = coming.members[k]!;
      if (this.#ready[o]! > at) continue;
      coming.delete(o);
      waiting.add(o);
    }
    const { classOf } = this.#problem.setups[machine]!;
    const row = this.#problem.setups[machine]!.row(this.#states[machine]!);
    let best = -1;
    let most = -Infinity;
    for (let k = 0; k < waiting.size; k++) {
      const o = waiting.members[k]!;
      const urgency = this.#urgency(o, machine, row[classOf[o]!]!, at);
      if (best >= 0 && (urgency < most || (urgency === most && o > best))) continue;
      best = o;
      most = urgency;
    }
    return best;
  }

  #place({ operation, machine, changeover }: Choice): void {
    const { eligible, setups, firstOf, jobOf } = this.#problem;
    timeOperation(this.#problem, this.#timing, operation, machine, this.#free[machine]!, changeover);
    const setup = setups[machine]!;
    this.#states[machine] = setup.after(this.#states[machine]!, setup.classOf[operation]!);
    this.#free[machine] = Math.max(this.#free[machine]!, this.#timing.end[operation]!);
    this.#queues[machine]!.push(operation);
    this.#done[operation] = 1;
    for (const m of eligible[operation]!) {
      this.#waiting[m]!.delete(operation);
      this.#coming[m]!.delete(operation);
    }
    if (operation + 1 < firstOf[jobOf[operation]! + 1]!) this.#release(operation + 1);
  }
}
