import type { Problem } from '../../problem.ts';
import type { Rng } from '../rng.ts';
import type { Trial } from '../trial.ts';
import { nearest } from './near.ts';

/** What moves look at and choose from. Built once a search; positions and ends are read from the trial as it stands. */
export interface SearchContext {
  readonly problem: Problem;
  readonly trial: Trial;
  readonly rng: Rng;
  /** Operations that are neither started, frozen nor pinned. */
  readonly movable: Int32Array;
  /** Of an operation, a few movable ones that change over to it fastest; of equal ones, those due at about the same time. */
  readonly near: (o: number) => Int32Array;
  /** Per machine, the first position the search may use. */
  readonly first: Int32Array;
}

/** Changes the trial's queues by a few shifts. @returns false when it found nothing to change */
export type Move = (context: SearchContext) => boolean;

export function searchContext(problem: Problem, trial: Trial, rng: Rng): SearchContext {
  const movable = Int32Array.from({ length: problem.operations }, (_, o) => o).filter(
    (o) => !problem.fixed[o],
  );
  const first = Int32Array.from(problem.front, (front) => front.length);
  return { problem, trial, rng, movable, near: nearest(problem, movable), first };
}

/** A movable operation by lot. */
export function anyOperation({ movable, rng }: SearchContext): number {
  return movable[rng.below(movable.length)]!;
}

/** Of a few movable operations by lot, the one whose job is late by the most weighted seconds. */
export function lateOperation(context: SearchContext): number {
  const { problem, trial } = context;
  let worst = anyOperation(context);
  let most = -Infinity;
  for (let k = 0; k < 3; k++) {
    const o = anyOperation(context);
    const job = problem.jobOf[o]!;
    const late = (trial.end[problem.firstOf[job + 1]! - 1]! - problem.due[job]!) * problem.weight[job]!;
    if (late > most) {
      most = late;
      worst = o;
    }
  }
  return worst;
}

/** A machine that can do the operation, by lot; its own half the time. */
export function someMachine({ problem, trial, rng }: SearchContext, o: number): number {
  const machines = problem.eligible[o]!;
  if (machines.length === 1 || rng.next() < 0.5) return trial.live.home[o]!;
  return machines[rng.below(machines.length)]!;
}

/** The position in a queue before the first operation that ends after the instant. */
export function positionAt({ trial, first }: SearchContext, m: number, instant: number): number {
  const queue = trial.live.queues[m]!;
  let low = first[m]!;
  let high = trial.live.lengths[m]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (trial.end[queue[middle]!]! > instant) high = middle;
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

/** Can all operations from one position up to another leave their queue for machine `to`? */
export function canMove(
  { problem, trial }: SearchContext,
  m: number,
  from: number,
  until: number,
  to: number,
): boolean {
  const queue = trial.live.queues[m]!;
  for (let k = from; k < until; k++)
    if (problem.fixed[queue[k]!] || problem.seconds[queue[k]! * problem.machines + to]! < 0) return false;
  return true;
}
