import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import { objectiveOf, termsOf } from '../score.ts';
import { emptyTiming, type Timing } from '../timing.ts';
import { timeQueues } from '../time-queues.ts';
import { LiveQueues } from './live-queues.ts';
import type { MoveEvaluator } from './move-evaluator.ts';

/** What placing an operation costs where machines wait for people or things, against timing one without. */
const CONTENDED_WORK = 20;

/** Evaluates a change by timing everything again: for limited crews, things shared and routings that cross. */
export class FullEvaluator implements MoveEvaluator {
  readonly live: LiveQueues;
  objective = Infinity;
  work = 0;
  readonly #problem: Problem;
  #committed: Timing;
  #tried: Timing;
  #objective = Infinity;

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    this.#problem = problem;
    this.#committed = emptyTiming(problem);
    this.#tried = emptyTiming(problem);
    this.live = new LiveQueues(problem, queues);
    this.load(queues);
  }

  get end(): Float64Array {
    return this.#committed.end;
  }

  load(queues: readonly ArrayLike<number>[]): void {
    this.live.load(queues);
    this.#objective = this.#time();
    this.commit();
  }

  evaluate(): number {
    this.live.restorePins();
    this.#objective = this.#time();
    return this.#objective - this.objective;
  }

  commit(): void {
    this.live.commit();
    this.objective = this.#objective;
    [this.#committed, this.#tried] = [this.#tried, this.#committed];
  }

  rollback(): void {
    this.live.rollback();
  }

  #time(): number {
    const { queues, lengths } = this.live;
    const views = queues.map((queue, m) => queue.subarray(0, lengths[m]));
    const timing = timeQueues(this.#problem, views, this.#tried);
    this.work += timing.placed * (isContended(this.#problem) ? CONTENDED_WORK : 4);
    if (timing.placed < this.#problem.operations) return Infinity;
    return objectiveOf(this.#problem.input.objective, termsOf(this.#problem, timing.end, timing.changeover));
  }
}
