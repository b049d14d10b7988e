import type { Problem } from '../problem.ts';
import { YieldBudget } from './yield-budget.ts';
import { advanceJob } from './moves/advance-job.ts';
import type { Incumbent } from './incumbent.ts';
import { joinNeighbours } from './moves/join-neighbours.ts';
import { gain, type Move } from './moves/move.ts';
import { searchContext, type SearchContext } from './moves/search-context.ts';
import { shiftOperation } from './moves/shift-operation.ts';
import { shiftRun } from './moves/shift-run.ts';
import { swapOperations } from './moves/swap-operations.ts';
import type { Rng } from '../../rng.ts';
import type { MoveEvaluator } from './move-evaluator.ts';

/** What proposing a move costs, against timing one operation. */
const MOVE_WORK = 20;
/** Work after which the cost of a typical move is known well enough. */
const SAMPLE_WORK = 2_000_000;
const TINY = 1e-6;

/**
 * Work of the first round, which is little more than a descent. The next are so much longer, that a busy machine has a
 * plan too, until they are long enough to cool well; from then on they grow slowly.
 */
const FIRST_ROUND = 2_000_000;
const GROWTH = 3;
const LONG = 18_000_000;
const SLOW_GROWTH = 1.25;

/** Temperatures of a round, as shares of what a typical worsening move costs; the initial one where there is time for it. */
const INITIAL = 0.15;
const FINAL = 0.003;
/** So many moves tried for each operation give time for the full initial temperature; a round with fewer starts cooler. */
const ENOUGH_TRIES = 4_000;
/** Initial temperatures of the later rounds in turn, as shares: now far from the best plan, now near it. */
const REHEATS = [1, 1, 0.3];

/**
 * Simulated annealing in rounds, each started from the best plan and longer than the one before, until the caller stops.
 * A round cools by the work it has done, so that large plans get fewer moves, and a lower temperature, for the same time:
 *
 *     temperature = initial × (final / initial) ^ (work done / work of the round)
 *     a move is accepted with chance e^(gain / temperature), surely where its gain is not below 0
 *
 * Source: S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Science 220, 1983, pp. 671-680; the temperatures measured in SEARCH.md.
 * Yields every few milliseconds of work; `queues` are the same object until better ones are found.
 */
export function* anneal(problem: Problem, evaluator: MoveEvaluator, rng: Rng): Generator<Incumbent, void> {
  const context = searchContext(problem, evaluator, rng);
  let best: Incumbent = { queues: evaluator.live.copy(), objective: evaluator.objective, evaluations: 0 };
  if (context.movable.length === 0) return;
  const budget = new YieldBudget();
  let evaluations = 0;
  let tried = 0;
  let length = FIRST_ROUND;
  for (let round = 0; ; round++) {
    evaluator.load(best.queues);
    const chosen = MOVE_WORK * tried;
    const typical = yield* typicalCost(context, { ...best, evaluations }, (work) =>
      budget.isDue(work + chosen),
    );
    const started = evaluator.work + chosen;
    // How many tries the round will have, as the rounds before went.
    const tries = (length * (tried + 1)) / (started + 1);
    const plenty = Math.min(1, tries / (ENOUGH_TRIES * context.movable.length));
    const initial =
      typical * Math.max(FINAL, round === 0 ? 0 : INITIAL * plenty * REHEATS[(round - 1) % REHEATS.length]!);
    const final = typical * FINAL * plenty;
    let temperature = initial;
    for (let done = 0; done < length; tried++) {
      if (chooseMove(rng)(context)) {
        evaluations += 1;
        const least = temperature * Math.log(1 - rng.next());
        if (gain(evaluator, least) >= least) evaluator.commit();
        else evaluator.rollback();
        if (evaluator.objective < best.objective - TINY)
          best = { queues: evaluator.live.copy(), objective: evaluator.objective, evaluations };
      }
      done = evaluator.work + MOVE_WORK * tried - started;
      if (tried % 64 === 0) temperature = initial * (final / initial) ** (done / length);
      if (budget.isDue(started + done)) yield { ...best, evaluations };
    }
    length *= length < LONG ? GROWTH : SLOW_GROWTH;
  }
}

function chooseMove(rng: Rng): Move {
  const u = rng.next();
  if (u < 0.2) return shiftOperation;
  if (u < 0.4) return swapOperations;
  if (u < 0.8) return joinNeighbours;
  if (u < 0.9) return shiftRun;
  return advanceJob;
}

/** Median cost of some moves that worsen the plan as it is; 1 when none does. Of fewer where an evaluation costs much. */
function* typicalCost(
  context: SearchContext,
  best: Incumbent,
  isDue: (work: number) => boolean,
): Generator<Incumbent, number> {
  const { evaluator, rng } = context;
  const costs: number[] = [];
  const enough = evaluator.work + SAMPLE_WORK;
  for (let k = 0; k < 400 && evaluator.work < enough; k++) {
    if (!chooseMove(rng)(context)) continue;
    const loss = -gain(evaluator, -Infinity);
    if (loss > TINY && loss < Infinity) costs.push(loss);
    evaluator.rollback();
    if (isDue(evaluator.work)) yield best;
  }
  costs.sort((a, b) => a - b);
  return costs[costs.length >> 1] ?? 1;
}
