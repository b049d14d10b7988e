import type { Problem } from '../problem.ts';
import { objectiveOf, termsOf } from '../score.ts';
import { emptyTiming, timeQueues, type Timing } from '../timing.ts';
import { LiveQueues } from './live-queues.ts';
import type { Trial } from './trial.ts';

/** What placing an operation costs where people are counted, against timing one without. */
const CREW_WORK = 20;

/** Prices a change by timing everything again: for limited crews and routings that cross. */
export class FullTrial implements Trial {
  readonly live: LiveQueues;
  objective = Infinity;
  work = 0;
  readonly #problem: Problem;
  #kept: Timing;
  #tried: Timing;
  #price = Infinity;

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    this.#problem = problem;
    this.#kept = emptyTiming(problem);
    this.#tried = emptyTiming(problem);
    this.live = new LiveQueues(problem, queues);
    this.load(queues);
  }

  get end(): Float64Array {
    return this.#kept.end;
  }

  load(queues: readonly ArrayLike<number>[]): void {
    this.live.load(queues);
    this.#price = this.#time();
    this.keep();
  }

  price(): number {
    this.live.restorePins();
    this.#price = this.#time();
    return this.#price - this.objective;
  }

  keep(): void {
    this.live.keep();
    this.objective = this.#price;
    [this.#kept, this.#tried] = [this.#tried, this.#kept];
  }

  undo(): void {
    this.live.undo();
  }

  #time(): number {
    const { queues, lengths } = this.live;
    const views = queues.map((queue, m) => queue.subarray(0, lengths[m]));
    const timing = timeQueues(this.#problem, views, this.#tried);
    this.work += timing.placed * (this.#problem.input.crew?.length ? CREW_WORK : 4);
    if (timing.placed < this.#problem.operations) return Infinity;
    return objectiveOf(this.#problem.input.objective, termsOf(this.#problem, timing.end, timing.changeover));
  }
}
