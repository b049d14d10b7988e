import type { Problem } from '../../problem.ts';
import type { MoveEvaluator } from '../move-evaluator.ts';
import type { Rng } from '../../../rng.ts';
import { neighbourLists } from './neighbour-lists.ts';

/** What moves are drawn from. Built once a search; positions and ends are those of the evaluator at the moment. */
export interface SearchContext {
  readonly problem: Problem;
  readonly evaluator: MoveEvaluator;
  readonly rng: Rng;
  /** Operations that are neither started, frozen nor pinned. */
  readonly movable: Int32Array;
  /** Of an operation, a few movable ones that change over to it fastest; of equal ones, those due at about the same time. */
  readonly neighbours: (o: number) => Int32Array;
  /** Per machine, the first position the search may use. */
  readonly first: Int32Array;
}

export function searchContext(problem: Problem, evaluator: MoveEvaluator, rng: Rng): SearchContext {
  const movable = Int32Array.from({ length: problem.operations }, (_, o) => o).filter(
    (o) => !problem.fixed[o],
  );
  const first = Int32Array.from(problem.front, (front) => front.length);
  return { problem, evaluator, rng, movable, neighbours: neighbourLists(problem, movable), first };
}

/** A movable operation, drawn at random. */
export function anyOperation({ movable, rng }: SearchContext): number {
  return movable[rng.below(movable.length)]!;
}

/** Of a few movable operations drawn at random, the one whose job is late by the most weighted seconds. */
export function lateOperation(context: SearchContext): number {
  const { problem, evaluator } = context;
  let worst = anyOperation(context);
  let most = -Infinity;
  for (let k = 0; k < 3; k++) {
    const o = anyOperation(context);
    const job = problem.jobOf[o]!;
    const late = (evaluator.end[problem.firstOf[job + 1]! - 1]! - problem.due[job]!) * problem.weight[job]!;
    if (late > most) {
      most = late;
      worst = o;
    }
  }
  return worst;
}

/** A machine that can do the operation, drawn at random; its own half the time. */
export function someMachine({ problem, evaluator, rng }: SearchContext, o: number): number {
  const machines = problem.eligible[o]!;
  if (machines.length === 1 || rng.next() < 0.5) return evaluator.live.machineOf[o]!;
  return machines[rng.below(machines.length)]!;
}

/** The position in a queue before the first operation that ends after the instant. */
export function positionAt({ evaluator, first }: SearchContext, m: number, instant: number): number {
  const queue = evaluator.live.queues[m]!;
  let low = first[m]!;
  let high = evaluator.live.lengths[m]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (evaluator.end[queue[middle]!]! > instant) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** A step forward or back, mostly short: of the size of 1 up to `most`. */
export function step(rng: Rng, most: number): number {
  const u = rng.next();
  const size = 1 + Math.floor(u * u * u * most);
  return rng.next() < 0.5 ? size : -size;
}

export const clamp = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
