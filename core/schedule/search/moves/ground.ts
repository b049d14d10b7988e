import type { Problem } from '../../problem.ts';
import type { Rng } from '../rng.ts';
import type { Trial } from '../trial.ts';

/** What moves look at and choose from. Built once a search; places and ends are read from the trial as it stands. */
export interface Ground {
  readonly problem: Problem;
  readonly trial: Trial;
  readonly rng: Rng;
  /** Operations that are neither started, frozen nor pinned. */
  readonly movable: Int32Array;
  /** Per operation, the movable ones that ask for the same setup where it can run, itself included. */
  readonly kin: readonly Int32Array[];
  /** Per machine, the first place the search may use. */
  readonly first: Int32Array;
}

/** Changes the trial's queues by a few shifts. @returns false when it found nothing to change */
export type Move = (ground: Ground) => boolean;

export function makeGround(problem: Problem, trial: Trial, rng: Rng): Ground {
  const movable = Int32Array.from({ length: problem.operations }, (_, o) => o).filter(
    (o) => !problem.fixed[o],
  );
  const groups = new Map<string, number[]>();
  const keys = Array.from(movable, (o) => {
    const m = problem.eligible[o]![0]!;
    return `${problem.eligible[o]!.join()} ${problem.setups[m]!.classOf[o]}`;
  });
  movable.forEach((o, k) => groups.set(keys[k]!, [...(groups.get(keys[k]!) ?? []), o]));
  const sorted = new Map([...groups].map(([key, ops]) => [key, Int32Array.from(ops)]));
  const kin: Int32Array[] = Array.from({ length: problem.operations }, () => new Int32Array(0));
  movable.forEach((o, k) => (kin[o] = sorted.get(keys[k]!)!));
  return {
    problem,
    trial,
    rng,
    movable,
    kin,
    first: Int32Array.from(problem.front, (front) => front.length),
  };
}

/** A movable operation by lot. */
export function anyOperation({ movable, rng }: Ground): number {
  return movable[rng.below(movable.length)]!;
}

/** Of a few movable operations by lot, the one whose job is late by the most weighted seconds. */
export function lateOperation(ground: Ground): number {
  const { problem, trial } = ground;
  let worst = anyOperation(ground);
  let most = -Infinity;
  for (let k = 0; k < 3; k++) {
    const o = anyOperation(ground);
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
export function someMachine({ problem, trial, rng }: Ground, o: number): number {
  const machines = problem.eligible[o]!;
  if (machines.length === 1 || rng.next() < 0.5) return trial.live.home[o]!;
  return machines[rng.below(machines.length)]!;
}

/** The place in a queue before the first operation that ends after the instant. */
export function placeAt({ trial, first }: Ground, m: number, instant: number): number {
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
