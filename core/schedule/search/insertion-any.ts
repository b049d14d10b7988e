import type { Problem } from '../problem.ts';
import { objectiveAt } from '../numbered-queues.ts';
import type { Insertion } from './insertion.ts';
import { queuesInOrder } from './job-order.ts';

/** Insertion for any objective: every position is timed in full. A partial order is completed by the jobs left, as numbered. */
export class AnyInsertion implements Insertion {
  work = 0;
  readonly #problem: Problem;

  constructor(problem: Problem) {
    this.#problem = problem;
  }

  value(order: readonly number[]): number {
    const placed = new Set(order);
    const rest = Array.from({ length: this.#problem.jobs }, (_, j) => j).filter((j) => !placed.has(j));
    this.work += 4 * this.#problem.operations;
    return objectiveAt(this.#problem, queuesInOrder(this.#problem, [...order, ...rest]));
  }

  *best(
    order: readonly number[],
    job: number,
    tie: number,
  ): Generator<void, { position: number; value: number }> {
    const values: number[] = [];
    for (let i = 0; i <= order.length; i++) {
      values.push(this.value(order.toSpliced(i, 0, job)));
      yield;
    }
    const value = Math.min(...values);
    const positions = [...values.keys()].filter((i) => values[i] === value);
    return { position: positions[Math.floor(tie * positions.length)]!, value };
  }
}
