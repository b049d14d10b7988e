import type { Problem } from '../problem.ts';
import { Breath } from './breath.ts';
import { advanceJob } from './moves/advance-job.ts';
import { makeGround, type Ground, type Move } from './moves/ground.ts';
import { joinNear } from './moves/join-near.ts';
import { shiftOperation } from './moves/shift-operation.ts';
import { shiftRun } from './moves/shift-run.ts';
import { swapOperations } from './moves/swap-operations.ts';
import type { Rng } from './rng.ts';
import type { Trial } from './trial.ts';

/** What a search found so far, as numbers. */
export interface Sighting {
  readonly queues: readonly ArrayLike<number>[];
  readonly objective: number;
  readonly evaluations: number;
  /** Every plan was tried: none is better. */
  readonly proven?: true;
}

/** What choosing a move costs, against timing one operation. */
const MOVE_WORK = 20;
/** Work after which the cost of a typical move is known well enough. */
const SAMPLE_WORK = 2_000_000;
const TINY = 1e-6;

/**
 * Hot ends of the rounds, as shares of what a typical worsening move costs. The first rounds only tidy up, which is all
 * a large plan has time for; the later ones go round among heats, the hottest to get out of where the search is stuck.
 */
const FIRST_HEATS = [0.01, 0.02, 0.04];
const LATER_HEATS = [0.06, 0.04, 0.2];
const COLD = 0.0007;
/** Each round is so much longer than the one before. */
const GROWTH = 1.4;

/**
 * Simulated annealing in rounds, each longer than the one before and started from the best plan, until the caller stops.
 * Source: S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Science 220, 1983, pp. 671-680.
 * Yields every few milliseconds of work; `queues` are the same object until better ones are found.
 */
export function* anneal(problem: Problem, trial: Trial, rng: Rng): Generator<Sighting, void> {
  const ground = makeGround(problem, trial, rng);
  let best: Sighting = { queues: trial.live.copy(), objective: trial.objective, evaluations: 0 };
  if (ground.movable.length === 0) return;
  const breath = new Breath();
  let evaluations = 0;
  let tried = 0;
  let steps = 20_000 + 50 * ground.movable.length;
  for (let round = 0; ; round++, steps *= GROWTH) {
    trial.load(best.queues);
    const typical = yield* typicalCost(ground, breath, { ...best, evaluations });
    let heat = typical * heatOf(round);
    const cooling = ((typical * COLD) / heat) ** (1 / steps);
    for (let k = 0; k < steps; k++, tried++, heat *= cooling) {
      if (chooseMove(rng)(ground)) {
        evaluations += 1;
        const limit = -heat * Math.log(1 - rng.next());
        if (trial.price(limit) <= limit) trial.keep();
        else trial.undo();
        if (trial.objective < best.objective - TINY)
          best = { queues: trial.live.copy(), objective: trial.objective, evaluations };
      }
      if (breath.isDue(trial.work + MOVE_WORK * tried)) yield { ...best, evaluations };
    }
  }
}

function heatOf(round: number): number {
  return FIRST_HEATS[round] ?? LATER_HEATS[(round - FIRST_HEATS.length) % LATER_HEATS.length]!;
}

function chooseMove(rng: Rng): Move {
  const u = rng.next();
  if (u < 0.2) return shiftOperation;
  if (u < 0.4) return swapOperations;
  if (u < 0.8) return joinNear;
  if (u < 0.9) return shiftRun;
  return advanceJob;
}

/** Median cost of some moves that worsen the plan as it stands; 1 when none does. Fewer where a move is dear to price. */
function* typicalCost(ground: Ground, breath: Breath, best: Sighting): Generator<Sighting, number> {
  const { trial, rng } = ground;
  const costs: number[] = [];
  const enough = trial.work + SAMPLE_WORK;
  for (let k = 0; k < 400 && trial.work < enough; k++) {
    if (!chooseMove(rng)(ground)) continue;
    const delta = trial.price(Infinity);
    if (delta > TINY && delta < Infinity) costs.push(delta);
    trial.undo();
    if (breath.isDue(trial.work)) yield best;
  }
  costs.sort((a, b) => a - b);
  return costs[costs.length >> 1] ?? 1;
}
